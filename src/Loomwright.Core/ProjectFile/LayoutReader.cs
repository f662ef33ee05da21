using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Reads where the boxes of the picture stand.</summary>
internal static class LayoutReader
{
    /// <summary>The line that tells what was there when the sheet was arranged.</summary>
    public const string ArrangedKey = "arranged";

    private const double Farthest = 100_000;

    public static Placing Read(Node? node, PartsRead parts, Found found)
    {
        var boxes = ImmutableArray.CreateBuilder<Placed>();
        Arranged? arranged = null;
        foreach (var entry in Sections.Map(node, "layout", found))
        {
            var numbers = Numbers(entry.Value);
            if (Names.Same(entry.Key.Text, ArrangedKey) && numbers is [var wires, var count, var top, var foot])
            {
                arranged ??= new Arranged(wires, count, top, foot);
            }
            else if (BenchReader.Known(entry.Key, entry.Key.Text, parts, found) is { } part)
            {
                switch (numbers)
                {
                    case [var x, var y]:
                        boxes.Add(new Placed(part, x, y));
                        break;
                    case [var x, var y, var fromX, var fromY]:
                        boxes.Add(new Placed(part, x, y) { From = (fromX, fromY) });
                        break;
                    default:
                        FormReader.WrongShape(entry.Value, $"the layout of “{entry.Key.Text}”", "two numbers, [40, 12]", found);
                        break;
                }
            }
        }

        return new Placing { Arranged = arranged, Boxes = boxes.ToImmutable() };
    }

    private static int[]? Numbers(Node node)
    {
        if (node is not Node.List list)
        {
            return null;
        }

        var numbers = list.Items.Select(i => i is Node.Scalar word && Typed.Read(word.Text, Unit.One) is Typed.Quantity { Si: var si } && Math.Abs(si) <= Farthest ? (int?)Math.Round(si) : null).ToList();
        return numbers.Contains(null) ? null : [.. numbers.Select(n => n!.Value)];
    }
}

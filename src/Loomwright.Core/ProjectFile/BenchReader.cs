using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Reads what stands in for what on the bench, and looks over the layout, which only the picture uses.</summary>
internal static class BenchReader
{
    public static ImmutableArray<StandIn> Read(Node? node, PartsRead parts, Found found)
    {
        var standIns = ImmutableArray.CreateBuilder<StandIn>();
        foreach (var entry in Sections.Map(node, "bench", found))
        {
            if (!Names.Same(entry.Key.Text, "stand-ins"))
            {
                FormReader.UnknownKey(entry.Key, ["stand-ins"], "the bench", found);
                continue;
            }

            foreach (var item in Sections.List(entry.Value, "stand-ins", found))
            {
                var settings = FormReader.Keys(item, Grammar.StandIn, "this stand-in", found);
                if (settings.Word("this") is { } used && settings.Word("for") is { } real && Known(((Node.Map)item).Find("for")!.Value, real, parts, found) is { } part)
                {
                    standIns.Add(new StandIn(used, part));
                }
            }
        }

        return standIns.ToImmutable();
    }

    /// <summary>Each line is a part with the two numbers of its place in the picture.</summary>
    public static void CheckLayout(Node? node, PartsRead parts, Found found)
    {
        foreach (var entry in Sections.Map(node, "layout", found))
        {
            if (Known(entry.Key, entry.Key.Text, parts, found) is not null
                && !(entry.Value is Node.List { Items: [Node.Scalar x, Node.Scalar y] } && IsNumber(x) && IsNumber(y)))
            {
                FormReader.WrongShape(entry.Value, $"the layout of “{entry.Key.Text}”", "two numbers, [40, 12]", found);
            }
        }
    }

    private static bool IsNumber(Node.Scalar word) => Typed.Read(word.Text, Unit.One) is Typed.Quantity;

    private static string? Known(Node at, string written, PartsRead parts, Found found)
    {
        if (parts.Find(written) is { } part)
        {
            return part.Name;
        }

        if (parts.IsPartial)
        {
            return null;
        }

        found.Look(
            "unknown-part",
            at.Span,
            "“{part}” is not among the parts",
            "this line has no effect",
            "{cure}",
            Evidence.Of("part", NodeReader.Short(written)),
            Evidence.Of("cure", Suggestion.For(written, [.. parts.All.Select(p => p.Name)])));
        return null;
    }
}

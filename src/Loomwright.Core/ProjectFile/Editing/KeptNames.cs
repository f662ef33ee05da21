using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Finds the wires whose derived name an edit would change; records, labels and photos hang on the name.</summary>
internal static class KeptNames
{
    /// <summary>Edits that write the old names down, for the tree before.</summary>
    public static ImmutableArray<Edit> For(IReadOnlyDictionary<int, Wire> before, IReadOnlyDictionary<int, Wire> after, IReadOnlyList<Edit> edits)
    {
        var wires = NodePath.Root.Key("wires");
        var removed = edits.OfType<Edit.Remove>().Where(e => e.At.Steps.Length == 2 && e.At.Parent == wires).Select(e => e.At.Steps[1].Index).ToList();
        var replaced = edits.OfType<Edit.Replace>().Select(e => e.At).ToHashSet();
        var kept = ImmutableArray.CreateBuilder<Edit>();
        foreach (var (item, wire) in before.OrderBy(w => w.Key))
        {
            var path = wires.Item(item);
            if (!wire.NameIsDerived || removed.Contains(item) || replaced.Contains(path) || replaced.Contains(wires) || edits.OfType<Edit.AddKey>().Any(e => e.At == path && e.Key == "name"))
            {
                continue;
            }

            if (after.TryGetValue(item - removed.Count(r => r < item), out var now) && !Names.Same(now.Name, wire.Name))
            {
                kept.Add(new Edit.AddKey(path, "name", Node.Word(wire.Name), First: true));
            }
        }

        return kept.ToImmutable();
    }
}

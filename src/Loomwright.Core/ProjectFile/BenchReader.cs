using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Reads what stands in for what on the bench.</summary>
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

    /// <summary>The part a line of the file tells of; null, with a finding, when there is none.</summary>
    public static string? Known(Node at, string written, PartsRead parts, Found found)
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

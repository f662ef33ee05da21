using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Makes a loom of a file's tree, section by section; a section with slips still gives what is right in it.</summary>
internal static class DesignReader
{
    private static readonly ImmutableArray<(string Ending, DropSpan Span)> Spans = [("both ways", DropSpan.BothWays), ("one way", DropSpan.OneWay), ("one-way", DropSpan.OneWay)];

    public static Loom? Read(Node.Map root, Found found, Places places)
    {
        if (!VersionIsOurs(root, found))
        {
            return null;
        }

        var top = Top(root, found);
        var wheres = PlacesReader.Read(top.GetValueOrDefault("places"), found);
        var distances = PlacesReader.Distances(top.GetValueOrDefault("distances"), wheres, found);
        var parts = PartsReader.Read(top.GetValueOrDefault("parts"), found.IsBrokenWithin(Section(root, "parts")), wheres, found);
        var wires = new WiresReader(parts, new Ways(distances), found, places).Read(top.GetValueOrDefault("wires"));
        var functions = FunctionsReader.Read(top.GetValueOrDefault("functions"), parts, found);
        var standIns = BenchReader.Read(top.GetValueOrDefault("bench"), parts, found);
        var placing = LayoutReader.Read(top.GetValueOrDefault("layout"), parts, found);
        return new Loom
        {
            Name = Text("name") ?? "unnamed",
            Notes = Text("notes"),
            Ground = Choice("ground") == "positive" ? GroundSide.Positive : GroundSide.Negative,
            Conditions = Conditions(top.GetValueOrDefault("conditions"), found),
            Places = wheres,
            Distances = distances,
            Parts = [.. parts.All.Where(p => p.Part is not null).Select(p => p.Part!)],
            Wires = wires,
            Functions = functions,
            StandIns = standIns,
            Placing = placing,
        };

        string? Text(string key) => top.TryGetValue(key, out var node) ? FormReader.Word(node, key, found)?.Text.Trim() : null;

        string? Choice(string key) => top.TryGetValue(key, out var node)
            && FormReader.Read(node, Grammar.File.First(p => p.Key == key).Form, key, found) is Value.Word word ? word.Text : null;
    }

    /// <summary>Whether the file says it is of the version this program reads; a file of a later one is never written to.</summary>
    public static bool VersionIsOurs(Node.Map root, Found found)
    {
        if (root.Find("loomwright") is not { } entry)
        {
            found.Stop(
                "version-missing",
                new Span(root.Span.Start, 0),
                "the file does not say that it is a design file",
                "without its version it is not known how to read it",
                "begin the file with a line “loomwright: 1”");
            return false;
        }

        var written = entry.Value is Node.Scalar word ? word.Text.Trim() : "";
        if (written == Grammar.Version)
        {
            return true;
        }

        found.Stop(
            "version-unknown",
            entry.Value.Span with { Length = Math.Min(entry.Value.Span.Length, 40) },
            "the file says version “{written}”; this program reads version {ours}",
            "a later version may mean other things by the same words, so nothing is read and nothing will be written",
            "open it with the program that wrote it, or write {ours} if that was a slip",
            Evidence.Of("written", NodeReader.Short(written)),
            Evidence.Of("ours", Grammar.Version));
        return false;
    }

    // From a section's key to the next section's: what a slip in it cut off stands there too. The whole file when the key is lost.
    private static Span Section(Node.Map root, string key)
    {
        if (root.Find(key) is not { } own)
        {
            return root.Span;
        }

        var start = own.Key.Span.Start;
        var next = root.Entries
            .Where(e => e.Key.Span.Start > start && Grammar.File.Any(p => Names.Same(p.Key, e.Key.Text)))
            .Select(e => e.Key.Span.Start)
            .DefaultIfEmpty(root.Span.End)
            .Min();
        return new Span(start, Math.Max(0, next - 1 - start));
    }

    private static Dictionary<string, Node> Top(Node.Map root, Found found)
    {
        var known = new Dictionary<string, Node>(Names.Comparer);
        foreach (var entry in root.Entries)
        {
            if (Grammar.File.Any(p => Names.Same(p.Key, entry.Key.Text)))
            {
                known[entry.Key.Text] = entry.Value;
            }
            else if (!entry.Key.Text.StartsWith("x-", StringComparison.OrdinalIgnoreCase))
            {
                FormReader.UnknownKey(entry.Key, [.. Grammar.File.Select(p => p.Key)], "the file", found);
            }
        }

        if (!known.ContainsKey("name") && !found.IsBrokenWithin(root.Span))
        {
            found.Look(
                "bike-unnamed",
                new Span(root.Span.Start, 0),
                "the bike has no name",
                "papers and labels carry it",
                "add a line “name: …”");
        }

        return known;
    }

    private static Conditions Conditions(Node? node, Found found)
    {
        var standard = Design.Conditions.Default;
        if (node is null)
        {
            return standard;
        }

        var settings = FormReader.Keys(node, Grammar.Conditions, "the conditions", found);
        var country = settings.Word("country");
        var (drop, span) = Drop((node as Node.Map)?.Find("drop limit")?.Value, found);
        return new Conditions(
            settings.Number("ambient") is { } ambient ? new Temperature(ambient) : standard.Ambient,
            settings.Number("insulation") is { } insulation ? new Temperature(insulation) : standard.Insulation,
            settings.Word("ampacity rule"),
            drop ?? standard.DropShare,
            country is null || Names.Same(country, "unset") ? null : country)
        {
            Bundle = (int)(settings.Number("bundle") ?? standard.Bundle),
            DropSpan = span,
        };
    }

    private static (double? Share, DropSpan Span) Drop(Node? node, Found found)
    {
        if (node is not Node.Scalar { IsEmpty: false } word)
        {
            return (null, DropSpan.BothWays);
        }

        var text = word.Text.Trim();
        var (ending, span) = Spans.FirstOrDefault(s => text.EndsWith(s.Ending, StringComparison.OrdinalIgnoreCase), (Ending: "", Span: DropSpan.BothWays));
        var form = new Form.Quantity(Unit.Share, 0.001, 0.5);
        return (FormReader.Read(word with { Text = text[..^ending.Length] }, form, "drop limit", found) is Value.Number number ? number.Si : null, span);
    }
}

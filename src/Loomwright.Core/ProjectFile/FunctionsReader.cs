using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Reads what the bike promises.</summary>
internal static class FunctionsReader
{
    private const string AllLamps = "all lamps";

    public static ImmutableArray<Function> Read(Node? node, PartsRead parts, Found found)
    {
        var controls = parts.Models.SelectMany(m => m.Controls).DistinctBy(c => Names.Fold(c.Name)).ToDictionary(c => c.Name, Names.Comparer);
        var functions = ImmutableArray.CreateBuilder<Function>();
        foreach (var entry in Sections.Map(node, "functions", found))
        {
            if (!OwnerName.Check(entry.Key, found))
            {
                continue;
            }

            var owner = $"the function “{entry.Key.Text}”";
            var map = entry.Value as Node.Map;
            var shows = Shows(map?.Find("shows")?.Value, parts, found);
            var may = Shows(map?.Find("may")?.Value, parts, found);
            FormReader.Keys(map is null ? entry.Value : WithoutShows(map), Grammar.FunctionWords, owner, found);
            var works = map?.Find("works")?.Value is Node.Scalar { IsEmpty: false } word ? Works(word, controls, parts, found) : null;
            if (works is not null)
            {
                functions.Add(new Function(entry.Key.Text, works, shows, may));
            }
        }

        return functions.ToImmutable();
    }

    private static Node.Map WithoutShows(Node.Map map) =>
        map with { Entries = map.Entries.RemoveAll(e => Names.Same(e.Key.Text, "shows") || Names.Same(e.Key.Text, "may")) };

    private static Expression? Works(Node.Scalar word, Dictionary<string, Parts.Control> controls, PartsRead parts, Found found)
    {
        var read = ExpressionText.Read(word.Text, [.. controls.Keys], name => controls.TryGetValue(name, out var c) ? c.Positions : []);
        if (read.Expression is not null)
        {
            return SaysPositions(read.Expression, word, controls, found) ? read.Expression : null;
        }

        if (parts.IsPartial || parts.All.Any(p => p.Model is null && Names.Fold(word.Text).Contains(Names.Fold(p.Name), StringComparison.Ordinal)))
        {
            // It names a control that could not be made out; that is already told.
            return null;
        }

        var at = word.Style == Style.Plain && read.ProblemOffset < word.Span.Length
            ? new Span(word.Span.Start + read.ProblemOffset, word.Span.Length - read.ProblemOffset)
            : word.Span;
        found.Stop(
            "condition-unclear",
            at,
            "the condition cannot be read here: {problem}",
            "without it nobody knows when the function works",
            "{cure}",
            Evidence.Of("problem", read.Problem ?? ""),
            Evidence.Of("cure", read.Cure ?? ""));
        return null;
    }

    private static bool SaysPositions(Expression works, Node.Scalar word, Dictionary<string, Parts.Control> controls, Found found)
    {
        var bare = BareControls.In(works).FirstOrDefault(name => controls.TryGetValue(name, out var control) && control.Positions.Length > 2);
        if (bare is null)
        {
            return true;
        }

        found.Stop(
            "position-missing",
            word.Span,
            "“{control}” has more than two positions and none is named here",
            "with {positions} it cannot be told which is meant",
            "write “{control} is {example}”",
            Evidence.Of("control", bare),
            Evidence.Of("positions", string.Join(", ", controls[bare].Positions)),
            Evidence.Of("example", controls[bare].Positions.First(p => p != controls[bare].Rest)));
        return false;
    }

    private static ImmutableArray<Show> Shows(Node? node, PartsRead parts, Found found)
    {
        var shows = ImmutableArray.CreateBuilder<Show>();
        foreach (var entry in Sections.Map(node, "shows", found))
        {
            if (FormReader.Read(entry.Value, new Loomwright.Parts.Form.Choice(Grammar.Symbols), entry.Key.Text, found) is Value.Word symbol
                && What(entry.Key, parts, found) is { } what)
            {
                shows.Add(new Show(what, symbol.Text));
            }
        }

        return shows.ToImmutable();
    }

    private static string? What(Node.Scalar key, PartsRead parts, Found found)
    {
        var written = key.Text.Trim();
        if (Names.Same(written, AllLamps))
        {
            return AllLamps;
        }

        var (name, element) = written.Split('.', 2) is [var before, var after] ? (before.Trim(), after.Trim()) : (written, "");
        if (parts.Find(name) is not { } part)
        {
            if (parts.IsPartial)
            {
                return null;
            }

            Unknown(key, name, [.. parts.All.Select(p => p.Name)], found);
            return null;
        }

        if (part.Model is not { } model)
        {
            return null;
        }

        var sights = model.Sights.Select(s => s.Name).ToList();
        if (element.Length == 0 && sights.Count > 0)
        {
            return part.Name;
        }

        if (sights.FirstOrDefault(s => Names.Same(s, element)) is { } sight)
        {
            return $"{part.Name}.{sight}";
        }

        Unknown(key, written, [.. sights.Select(s => s.Length == 0 ? part.Name : $"{part.Name}.{s}")], found);
        return null;
    }

    private static void Unknown(Node.Scalar key, string written, IReadOnlyCollection<string> known, Found found) => found.Stop(
        "nothing-to-see",
        key.Span,
        "“{written}” is nothing that can be seen or heard",
        "a function promises what a lamp or a horn does",
        "{cure}",
        Evidence.Of("written", NodeReader.Short(written)),
        Evidence.Of("cure", Suggestion.For(written, known)));
}

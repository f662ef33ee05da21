using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Fixes;
using Loomwright.Verbs;
using Spectre.Console;

namespace Loomwright.Output;

/// <summary>Findings for a person: where, how much it matters, then what, why, do and what it rests on.</summary>
internal static class FindingsView
{
    public static void Write(Screen screen, OpenedDesign design, ImmutableArray<Finding> findings)
    {
        foreach (var finding in findings)
        {
            Write(screen, design, finding);
        }

        if (design.Bike.Loom is null)
        {
            screen.Line($"{design.Stored.Path} cannot be read as a design.");
        }
        else if (!design.Bike.IsComplete)
        {
            screen.Line($"Part of {design.Stored.Path} could not be read; only the rest was checked.");
        }

        screen.Line(Totals(findings));
        if (!findings.IsEmpty)
        {
            screen.Line($"More about one: loomwright explain {findings[0].Code}");
        }
    }

    private static void Write(Screen screen, OpenedDesign design, Finding finding)
    {
        var place = design.Place(finding.Where).Start;
        var (sign, colour) = Mark(finding.Severity);
        screen.Write(new Markup($"[bold]{Markup.Escape($"{design.Stored.Path}:{place}")}[/] [{colour}]{sign} {Word(finding.Severity)}[/] {Markup.Escape(finding.Code)}\n"));
        screen.Item("  what    ", finding.What);
        screen.Item("  why     ", finding.Why);
        screen.Item("  do      ", finding.Do);
        var told = $"{finding.What} {finding.Why} {finding.Do}";
        var rest = finding.Evidence.Where(e => !told.Contains(e.Value, StringComparison.Ordinal)).Select(e => $"{e.Name} {e.Value}").ToList();
        if (rest.Count > 0)
        {
            screen.Item("  evidence", string.Join("; ", rest));
        }

        foreach (var fix in design.Bike.Fixes.Where(f => f.For == finding))
        {
            screen.Item("  fix     ", $"{fix.Id}: {fix.Title}");
        }

        screen.Line();
    }

    /// <summary>A fix that was just written: its lines before and after.</summary>
    public static void Write(Screen screen, string path, TriedFix written)
    {
        screen.Line($"{written.Fix.Title}:");
        foreach (var change in written.Lines)
        {
            screen.Line(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{path}:{change.Line}"));
            foreach (var line in change.Before.Select(l => $"- {l}").Concat(change.After.Select(l => $"+ {l}")))
            {
                screen.Line(line);
            }
        }

        screen.Line($"Written into {path}. What the check finds now:");
        screen.Line();
    }

    private static string Totals(ImmutableArray<Finding> findings)
    {
        var counts = new[] { Severity.Stop, Severity.Look, Severity.Note }.Select(s => $"{findings.Count(f => f.Severity == s)} {Word(s)}");
        return string.Join(", ", counts) + ". Computed from the file; your bike was not measured.";
    }

    /// <summary>The severity as a word.</summary>
    public static string Word(Severity severity) => severity switch
    {
        Severity.Stop => "stop",
        Severity.Look => "look",
        Severity.Note => "note",
    };

    /// <summary>The severity as a sign: a square, a triangle, a dot.</summary>
    public static string Sign(Severity severity) => Mark(severity).Sign;

    private static (string Sign, string Colour) Mark(Severity severity) => severity switch
    {
        Severity.Stop => ("■", "red bold"),
        Severity.Look => ("▲", "yellow"),
        Severity.Note => ("·", "blue"),
    };
}

using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>How long a stage takes and what it needs beside parts and wires. Minutes are judgement, for someone who does it the first time.</summary>
public static class Effort
{
    /// <summary>Whole minutes, waits included.</summary>
    public static int Minutes(Stage stage) => (int)Math.Ceiling(stage.Steps.Sum(Of));

    /// <summary>Tools by name, what is used first first.</summary>
    public static ImmutableArray<string> Tools(Stage stage)
    {
        var tools = ImmutableArray.CreateBuilder<string>();
        if (stage.Steps.Any(s => s is { Act: Act.Connect, Wire: not null }))
        {
            tools.Add("pliers for the terminals");
        }

        if (stage.Steps.Any(s => s.Meter is not null))
        {
            tools.Add("meter");
        }

        if (stage.Steps.Any(s => s.Act == Act.PowerUp))
        {
            tools.Add("two clip leads");
        }

        var fuses = stage.Steps.Where(s => s.Act == Act.Fetch).Select(s => (Fuse: FuseIn(s.Text), ForChoice: Fetching.FuseIsForChoice(s.Text))).Where(f => f.Fuse is not null);
        tools.AddRange(fuses.GroupBy(f => f.Fuse!, f => f.ForChoice).Select(f => Counted(f.Key, f.Count(c => !c), f.Count(c => c))));
        return tools.ToImmutable();
    }

    private static string Counted(string fuse, int needed, int forChoice)
    {
        var counted = needed > 1 ? FormattableString.Invariant($"{needed} × {fuse}") : fuse;
        return forChoice == 0 ? counted : needed == 0 ? $"{counted} if you use a key lead" : FormattableString.Invariant($"{counted} ({forChoice} more if you use a key lead)");
    }

    private static double Of(Step step) => (step.Wait?.TotalMinutes ?? 0) + step.Act switch
    {
        Act.Fetch => 0.3,
        Act.TakeOut => 1,
        Act.Connect => step.Wire is null ? 0.5 : 2,
        Act.Measure => 0.5,
        Act.PowerUp or Act.PowerDown => 0.3,
        _ => step.Meter is null ? 0.2 : 0.7,
    };

    private static string? FuseIn(string text)
    {
        var at = text.IndexOf(" A fuse", StringComparison.Ordinal);
        var start = at < 0 ? -1 : text.LastIndexOf(' ', at - 1) + 1;
        return start < 0 ? null : text[start..(at + " A fuse".Length)];
    }
}

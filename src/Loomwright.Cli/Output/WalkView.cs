using Loomwright.Simulation;
using Loomwright.Walk;

namespace Loomwright.Output;

/// <summary>What a walk found, for a person: each surprise with the way to it, then how much was walked.</summary>
internal static class WalkView
{
    public static void Write(Screen screen, Walked walked)
    {
        foreach (var surprise in walked.Surprises)
        {
            Write(screen, surprise);
        }

        foreach (var feed in walked.BackFeeds)
        {
            screen.Line($"Current flows into {feed.Box}.{feed.Terminal} from outside while it is off, up to {feed.Current}.");
            screen.Item("  first at", Way(feed.Steps));
            screen.Line();
        }

        if (walked.Drain is { } drain)
        {
            screen.Line($"With no function working the supply gives at most {drain.Current}: {Way(drain.Steps)}.");
        }

        screen.Line(walked.Surprises.Length switch { 0 => "No surprise.", 1 => "1 surprise.", var n => FormattableString.Invariant($"{n} surprises.") });
        screen.Line(walked.InWords);
    }

    private static void Write(Screen screen, Surprise surprise)
    {
        screen.Line($"▲ {surprise.Title}");
        screen.Item("  first at", Way(surprise.Steps));
        foreach (var part in surprise.Parts)
        {
            screen.Item("  there   ", $"{Words.Name(part.Part)} should be: {part.Expected}; it is: {part.Seen}");
        }

        foreach (var happened in surprise.Events)
        {
            screen.Item("  because ", happened);
        }

        if (!surprise.Memory.IsEmpty)
        {
            screen.Item("  memory  ", string.Join(", ", surprise.Memory));
        }

        screen.Item("  in all  ", (surprise.Times == 1 ? "once" : FormattableString.Invariant($"{surprise.Times} times")) + (surprise.DependsOnTiming ? "; depends on timing" : ""));
        screen.Line();
    }

    private static string Way(IReadOnlyCollection<WalkStep> steps) => steps.Count == 0 ? "everything at rest" : string.Join("; ", steps.Select(s => s.Words));
}

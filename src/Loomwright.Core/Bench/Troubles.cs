using Loomwright.Simulation;

namespace Loomwright.Bench;

/// <summary>What goes wrong in a stage although everything is connected as drawn.</summary>
internal static class Troubles
{
    public static IEnumerable<string> Of(Site site, IReadOnlyList<Frame> frames)
    {
        var stage = FormattableString.Invariant($"Stage {site.Number}");
        var limit = IsAtLimit(site, frames) ? [$"{site.Whole.Source!.Name} is too small: at its limit it does not hold its volts."] : Array.Empty<string>();
        return frames.SelectMany(f => Of(f)).Distinct(StringComparer.Ordinal).Concat(limit).Select(t => $"{stage}: {t}");
    }

    /// <summary>Whether a bench supply gives all it can and its volts sag.</summary>
    public static bool IsAtLimit(Site site, IReadOnlyList<Frame> frames) =>
        site.Model(site.Whole.Source!.Name).Supply!.LimitAmps is { } limit && frames.SelectMany(f => f.Phases).Any(p => p.Supply.Amps >= limit * 0.99);

    private static IEnumerable<string> Of(Frame frame)
    {
        foreach (var fuse in frame.Fuses.Where(f => f.State == FuseState.Blown))
        {
            yield return $"computed, {fuse.Part} ({fuse.Rating.Printed}) blows at \"{frame.Step}\". Do not power this stage.";
        }

        var odd = frame.Outcome switch
        {
            Outcome.Settled => null,
            Outcome.SwitchesByItself => "it switches on and off by itself: the supply may be too small to start this load cold",
            Outcome.Race => "what happens depends on which of two things is quicker",
            Outcome.UndefinedInput => "an input rests between its thresholds",
            Outcome.Unsolved => "no answer was found",
            _ => throw new InvalidOperationException("an outcome of no known form"),
        };
        if (odd is not null)
        {
            yield return $"computed, at \"{frame.Step}\" {odd}.";
        }
    }
}

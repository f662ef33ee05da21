using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A fuse smaller than what its circuit takes when everything behind it is on.</summary>
internal static class FuseBelowLoad
{
    // More than this times a fuse's rating is a short, which other rules tell of (judgement).
    private const double ShortAboveShare = 20;
    private const double LargestAmps = 500;

    public static Rule Rule { get; } = new(
        "fuse-below-load",
        Severity.Look,
        Severity.Look,
        "A fuse smaller than what flows through it in ordinary use.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
        [.. Enumerable.Range(0, study.Tried.Wiring.Fuses.Length).Select(f => Found(study, f)).OfType<Finding>()];

    private static Finding? Found(Study study, int fuse)
    {
        var (tried, place) = (study.Tried, study.Tried.Wiring.Fuses[fuse]);
        var moment = tried.Moments.FirstOrDefault(m => m.Settled.State.Blown[fuse])
            ?? tried.Moments.Where(m => m.Settled.Outcome == Outcome.Settled && Tried.Amps(m, place.Link) > place.RatingAmps).MaxBy(m => Tried.Amps(m, place.Link));
        if (moment is null)
        {
            return null;
        }

        var opens = moment.Settled.State.Blown[fuse];
        var held = opens ? new Moment([], Tried.After(Larger(study.Loom, place.Part), moment.Operations, coldStart: false)) : moment;
        var amps = Tried.Amps(held, place.Link);

        // What would only open the next fuse is a short, and rules of their own tell of it.
        return amps > ShortAboveShare * place.RatingAmps || held.Settled.State.Blown.AsSpan().Contains(true) ? null : new Finding(
            Rule.Code,
            Severity.Look,
            new Subject.OfPart(place.Part),
            amps <= place.RatingAmps ? "{fuse} ({rating}) would carry {amps} warm, but opens on the first, cold moment."
                : opens ? "{amps} would flow through {fuse} ({rating}): it opens."
                : "{amps} flows through {fuse} ({rating}).",
            amps <= place.RatingAmps ? "Cold filaments take many times their current for some milliseconds. Computed with {when}."
                : "Above what is printed on it a fuse may stand for hours or open on a warm day; what it feeds then goes out together. Computed with {when}.",
            "Spread the loads over two fuses. A larger fuse only if every wire behind it stands that one.",
            [
                Evidence.Of("fuse", place.Part),
                Evidence.Of("rating", new Current(place.RatingAmps).Printed),
                Evidence.Of("amps", new Current(amps)),
                Evidence.Of("when", moment.InWords),
            ]);
    }

    private static Loom Larger(Loom loom, string fuse) => loom with
    {
        Parts = [.. loom.Parts.Select(p => Names.Same(p.Name, fuse) ? p with { Settings = p.Settings.With("rating", new Value.Number(LargestAmps)) } : p)],
    };
}

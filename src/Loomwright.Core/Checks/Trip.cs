using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>An output that was seen to trip while the bike was operated.</summary>
/// <param name="Loads">What hangs on it.</param>
/// <param name="WarmAmps">What it would carry for good if nothing tripped.</param>
/// <param name="When">What was operated.</param>
internal sealed record Trip(TerminalRef At, Output Output, ImmutableArray<string> Loads, double WarmAmps, string When)
{
    public bool IsAboveLimit => WarmAmps > Output.LimitAmps;

    /// <summary>What both rules about it tell.</summary>
    public ImmutableArray<Evidence> Facts(Paths paths) =>
    [
        Evidence.Of("terminal", Called.At(paths, At)),
        Evidence.Of("loads", string.Join(", ", Loads.DefaultIfEmpty("what hangs there"))),
        Evidence.Of("amps", new Current(WarmAmps)),
        Evidence.Of("limit", new Current(Output.LimitAmps!.Value).Printed),
        Evidence.Of("when", When),
    ];

    /// <summary>The first of each output, in file order.</summary>
    public static IEnumerable<Trip> In(Study study)
    {
        var tried = study.Tried;
        for (var b = 0; b < tried.Wiring.Boxes.Length; b++)
        {
            var box = tried.Wiring.Boxes[b];
            for (var o = 0; o < box.Facts.Outputs.Length; o++)
            {
                if (tried.Moments.FirstOrDefault(m => m.Settled.State.Boxes[b].Tripped[o] && !m.Settled.Events.Any(e => Happening.IsTotalTrip(e, box.Part))) is not { } moment)
                {
                    continue;
                }

                var without = Tried.After(Unlimited(study.Loom), moment.Operations, coldStart: false);
                var at = new TerminalRef(box.Part, box.Facts.Outputs[o].Terminal);
                var joined = study.Paths.Joined(at, t => t.Carries && t.Via != Via.Output);
                yield return new Trip(
                    at,
                    box.Facts.Outputs[o],
                    [.. study.Paths.Ties.Where(t => t.Via == Via.Load && t.Part!.Name != box.Part && (joined.Contains(t.A) || joined.Contains(t.B))).Select(t => t.Part!.Name).Distinct(StringComparer.Ordinal)],
                    Tried.Amps(new Moment([], without), box.OutputLinks[o]),
                    moment.InWords);
            }
        }
    }

    private static Loom Unlimited(Loom loom) => loom with
    {
        Parts = [.. loom.Parts.Select(p => Kinds.Find(p.Kind)?.Build(p).Controller is null ? p : p with { Settings = Without(Without(p.Settings, "total limit"), "limit") })],
    };

    private static Settings Without(Settings settings, string key) => new(
    [
        .. settings.Entries.Where(e => e.Key != key)
            .Select(e => e.Value is Value.Group group ? KeyValuePair.Create<string, Value>(e.Key, new Value.Group(Without(group.Entries, key))) : e),
    ]);
}

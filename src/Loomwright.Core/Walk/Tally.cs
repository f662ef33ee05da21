using System.Collections.Immutable;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>Gathers what the walk comes upon: what has one cause is told once, where it takes the fewest operations.</summary>
internal sealed class Tally(Shared shared, Trail trail)
{
    private readonly List<Group> _groups = [];
    private readonly Dictionary<(SurpriseKind, string), Group> _known = [];
    private readonly SortedDictionary<(int Box, int Output), Feed> _feeds = [];
    private (double Amps, int From, Reached At)? _drain;

    public int Count => _groups.Count;

    /// <summary>Adds what an event led to that nothing goes on from.</summary>
    public void Add(int from, Reached reached, Failure failure)
    {
        var subject = string.Join(" and ", failure.Parts.Select(p => p.Part));
        Add((failure.Kind, subject), () => new Group(failure.Kind, null, failure.Parts, failure.Events, from, reached));
    }

    /// <summary>Adds what a new state is worth.</summary>
    public void Add(int place, Verdict verdict)
    {
        var (from, reached) = trail.FirstWay(place);
        foreach (var same in verdict.Mismatches.GroupBy(m => (m.Kind, Subject: m.Function ?? m.Part.Part)))
        {
            Add(same.Key, () => new Group(same.Key.Kind, same.First().Function, [.. same.Select(m => m.Part)], [], from, reached));
        }

        if (verdict.DrainAmps is { } amps && (_drain is null || amps > _drain.Value.Amps))
        {
            _drain = (amps, from, reached);
        }

        foreach (var (box, output, current) in verdict.BackFeeds)
        {
            _feeds[(box, output)] = _feeds.TryGetValue((box, output), out var feed)
                ? feed with { Amps = Math.Max(feed.Amps, current), States = feed.States + 1 }
                : new Feed(current, 1, from, reached);
        }
    }

    public ImmutableArray<Surprise> Surprises() => [.. _groups.Select(Told).OrderBy(s => s.Steps.Length)];

    public ImmutableArray<BackFeed> BackFeeds() =>
    [
        .. _feeds.Select(f => new BackFeed(
            shared.Wiring.Boxes[f.Key.Box].Part,
            shared.Wiring.Boxes[f.Key.Box].Facts.Outputs[f.Key.Output].Terminal,
            new Current(f.Value.Amps),
            trail.Steps(f.Value.From, f.Value.At),
            f.Value.States)),
    ];

    public Drain? Drain() => _drain is { } most ? new Drain(new Current(most.Amps), trail.Steps(most.From, most.At)) : null;

    private void Add((SurpriseKind, string) key, Func<Group> first)
    {
        if (!_known.TryGetValue(key, out var group))
        {
            _known.Add(key, group = first());
            _groups.Add(group);
        }

        group.Times++;
    }

    private Surprise Told(Group group)
    {
        var steps = trail.Steps(group.From, group.At);
        return new Surprise(
            group.Kind,
            group.Function,
            steps,
            [.. shared.Wiring.Controls.Select((c, i) => Control(c, i, group.At.Setting))],
            [.. Remembered(group.At.Inside.State)],
            group.Parts,
            steps.Any(s => s.Operation is Operation.Wait),
            group.Times,
            group.Events);
    }

    private ControlSeen Control(Parts.Control control, int place, Setting setting) =>
        new(control.Name, control.Positions[setting.Positions[place]], setting.Positions[place] == shared.Settings.RestOf(place));

    private IEnumerable<string> Remembered(State state) =>
        from b in Enumerable.Range(0, shared.Wiring.Boxes.Length)
        let box = shared.Wiring.Boxes[b]
        from o in Enumerable.Range(0, box.OutputLinks.Length)
        where box.Rules.Remembers(state.Boxes[b].Memory, o + 1)
        select $"{box.Part}: {box.Facts.Outputs[o].Name}";

    private sealed record Group(SurpriseKind Kind, string? Function, ImmutableArray<PartSurprise> Parts, ImmutableArray<string> Events, int From, Reached At)
    {
        public long Times { get; set; }
    }

    private sealed record Feed(double Amps, long States, int From, Reached At);
}

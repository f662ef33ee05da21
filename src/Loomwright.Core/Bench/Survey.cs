using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Everything the design has to show, each with what brings it on and what it runs through.</summary>
internal sealed class Survey
{
    private readonly Paths _paths;
    private readonly Trials _trials;
    private readonly ImmutableArray<Control> _controls;
    private readonly Levers _levers;
    private readonly Frame _atRest;

    public Survey(Loom loom)
    {
        _paths = new Paths(loom);
        _controls = [.. loom.Parts.SelectMany(p => _paths.Models.GetValueOrDefault(p.Name)?.Controls ?? []).DistinctBy(c => c.Name, Names.Comparer)];
        _trials = new Trials(loom, _controls);
        _levers = new Levers(_paths);
        _atRest = _trials.After([]);
        Boxes = [.. loom.Parts.Where(p => _paths.Models.GetValueOrDefault(p.Name)?.Controller is not null).Select(BoxLine).OfType<Line>()];
        var loads = _atRest.Seen.Select(s => (s.Name, Line: LoadLine(s))).ToImmutableArray();
        Loads = [.. loads.Where(l => l.Line is not null).Select(l => l.Line!)];
        NeverOn = [.. loads.Where(l => l.Line is null).Select(l => l.Name)];
    }

    public Paths Paths => _paths;

    /// <summary>The bike after operations from rest.</summary>
    public Frame After(ImmutableArray<Operation.Set> operations) => _trials.After(operations);

    public ImmutableArray<Control> Controls => _controls;

    /// <summary>Each load controller alone, with what wakes it; one that never wakes is left out.</summary>
    public ImmutableArray<Line> Boxes { get; }

    /// <summary>Each lamp and horn by itself, in file order.</summary>
    public ImmutableArray<Line> Loads { get; }

    /// <summary>Lamps and horns that no operations tried bring on.</summary>
    public ImmutableArray<string> NeverOn { get; }

    /// <summary>Whether the control springs back.</summary>
    public bool IsMomentary(string control) => _controls.Any(c => Names.Same(c.Name, control) && c.Momentary);

    private Line? BoxLine(Part part)
    {
        var box = _paths.Models[part.Name].Controller!;
        var usable = _levers.Of(Levers.Inputs(part.Name, box, box.Awake).Append(new(part.Name, box.Supply)).Append(new(part.Name, box.Ground)));
        var found = _trials.Shortest(f => f.Outcome == Outcome.Settled && f.Controllers.Any(c => Names.Same(c.Part, part.Name) && c.Awake), [], usable);
        if (found is not { } operations)
        {
            return null;
        }

        var needs = new Needs(_paths, _trials.After(operations), _atRest);
        needs.Box(part.Name, box.Awake);
        needs.Controls(operations.Select(o => o.Control));
        return new Line(part.Name, [], operations, needs.Reach, [part.Kind]) { Box = part.Name };
    }

    private Line? LoadLine(Seen seen)
    {
        var tie = Sighted.Tie(_paths, seen.Name);
        if (BroughtOn(seen, tie) is not { } operations)
        {
            return null;
        }

        var at = _trials.After(operations);
        var needs = new Needs(_paths, at, _atRest);
        if (!needs.Load(tie))
        {
            return null;
        }

        var held = operations.Select(o => o.Control).ToImmutableArray();
        needs.Controls(held);
        var (also, ends) = OtherWays(seen.Name, operations);
        var reach = also.Append([.. operations, .. ends]).Aggregate(needs.Reach, (r, way) => r.With(Needed(tie, way)));
        var routes = new Routes(_paths, at);
        var output = routes.Through(tie)!.Value.Feed.SelectMany(t => new[] { t.A, t.B }).Where(routes.IsOutput).Cast<TerminalRef?>().FirstOrDefault();
        var fedBy = output is { } o ? _paths.Models[o.Part].Controller!.Outputs.First(x => Names.Same(x.Terminal, o.Terminal)) : null;
        return new Line(NameOf(seen, fedBy), [seen.Name], operations, reach, News.Of(_paths, tie, fedBy, needs.Reach, [.. held.Where(IsMomentary)]))
        {
            Box = output?.Part,
            Output = output,
            Also = also,
            Ends = [.. ends.Where(e => _paths.Loom.Parts.Any(p => reach.Parts.Contains(p.Name, Names.Comparer) && _paths.Models[p.Name].Controls.Any(c => Names.Same(c.Name, e.Control))))],
            Cranks = Risky.IsStarter(tie.Part!),
        };
    }

    private Reach Needed(Tie tie, ImmutableArray<Operation.Set> operations)
    {
        var needs = new Needs(_paths, _trials.After(operations), _atRest);
        _ = needs.Load(tie);
        needs.Controls(operations.Select(o => o.Control));
        return needs.Reach;
    }

    // Each control the functions name beside those used: what it ends, and what brings the load on all the same.
    private (ImmutableArray<ImmutableArray<Operation.Set>> Also, ImmutableArray<Operation.Set> Ends) OtherWays(string load, ImmutableArray<Operation.Set> operations)
    {
        var promised = Promised(load);
        bool IsOnThere(Frame f) => f.Outcome == Outcome.Settled && IsOn(f, load);
        var still = operations.Where(o => !IsMomentary(o.Control)).ToImmutableArray();
        var also = operations.Where(o => IsMomentary(o.Control))
            .Select(o => _trials.Shortest(IsOnThere, still, [.. promised.Where(p => !Names.Same(p, o.Control))]))
            .OfType<ImmutableArray<Operation.Set>>().Where(w => w.Length > still.Length).ToList();
        var ends = _controls.Where(c => !c.Momentary && promised.Contains(c.Name) && !operations.Any(o => Names.Same(o.Control, c.Name)))
            .SelectMany(c => c.Positions.Where(p => !Names.Same(p, c.Rest)).Select(p => new Operation.Set(c.Name, p)))
            .Where(o => !IsOnThere(_trials.After([.. operations, o]))).ToImmutableArray();
        also.AddRange(ends.Select(o => _trials.Shortest(IsOnThere, still.Add(o), promised)).OfType<ImmutableArray<Operation.Set>>());
        return ([.. also], ends);
    }

    private HashSet<string> Promised(string load) =>
        _paths.Loom.Functions.Where(f => f.Shows.Any(s => Names.Same(s.What, load))).SelectMany(f => f.Works.NamesUsed()).ToHashSet(Names.Comparer);

    // What the functions that show it name is tried first, then whatever can matter to it; with its boxes awake first.
    private ImmutableArray<Operation.Set>? BroughtOn(Seen seen, Tie tie)
    {
        var promised = Promised(seen.Name);
        var levers = _levers.Of([tie.A, tie.B]);
        bool IsOnThere(Frame f) => f.Outcome == Outcome.Settled && IsOn(f, seen.Name);
        var woken = Boxes.Where(b => b.Do.All(o => levers.Contains(o.Control))).Select(b => b.Do).FirstOrDefault([]);
        return _trials.Shortest(IsOnThere, woken, promised) ?? _trials.Shortest(IsOnThere, [], promised)
            ?? _trials.Shortest(IsOnThere, woken, levers) ?? _trials.Shortest(IsOnThere, [], levers);
    }

    private string NameOf(Seen seen, Output? output) =>
        _paths.Loom.Functions.FirstOrDefault(f => f.Shows.Any(s => Names.Same(s.What, seen.Name)))?.Name ?? output?.Name ?? seen.Name;

    private static bool IsOn(Frame frame, string seen) => frame.Seen.Any(s => s.Name == seen && Line.IsOn(s));
}

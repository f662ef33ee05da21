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
    private readonly Dictionary<string, string> _rest;
    private readonly Frame _atRest;

    public Survey(Loom loom)
    {
        _paths = new Paths(loom);
        _controls = [.. loom.Parts.SelectMany(p => _paths.Models.GetValueOrDefault(p.Name)?.Controls ?? []).DistinctBy(c => c.Name, Names.Comparer)];
        _trials = new Trials(loom, _controls);
        _rest = _controls.ToDictionary(c => c.Name, c => c.Rest, Names.Comparer);
        _atRest = _trials.After([]);
        Boxes = [.. loom.Parts.Where(p => _paths.Models.GetValueOrDefault(p.Name)?.Controller is not null).Select(BoxLine).OfType<Line>()];
        var loads = _atRest.Seen.Select(s => (s.Name, Line: LoadLine(s))).ToImmutableArray();
        Loads = [.. loads.Where(l => l.Line is not null).Select(l => l.Line!)];
        NeverOn = [.. loads.Where(l => l.Line is null).Select(l => l.Name)];
    }

    public Paths Paths => _paths;

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
        var inputs = InputsOf(part, box, box.Awake);
        var near = _paths.ControlsNear(inputs, out _);
        var found = _trials.Shortest(f => f.Outcome == Outcome.Settled && f.Controllers.Any(c => Names.Same(c.Part, part.Name) && c.Awake), [], near);
        if (found is not { } operations)
        {
            return null;
        }

        var routes = new Routes(_paths, After(operations));
        var feed = routes.Way(_paths.Feed, t => t.Equals(new TerminalRef(part.Name, box.Supply)));
        var back = routes.Way(_paths.Return, t => t.Equals(new TerminalRef(part.Name, box.Ground)));
        var wake = routes.OfControls(operations.Select(o => o.Control), _rest, inputs);
        var alone = new Reach([part.Name], []);
        return new Line(part.Name, [], operations, Routes.Of(feed ?? []).With(Routes.Of(back ?? [])).With(alone).With(wake), [part.Kind]) { Box = part.Name };
    }

    private Line? LoadLine(Seen seen)
    {
        var tie = _paths.Ties.First(t => t.Element is { } e && Names.Same(t.Part!.Name, seen.Part) && IsOf(seen, t.Part, e));
        var near = _paths.ControlsNear([tie.A, tie.B], out var joined);
        var outputs = joined.Where(IsOutput).ToImmutableArray();
        var boxPart = outputs.IsEmpty ? null : _paths.Loom.Part(outputs[0].Part);
        var box = boxPart is null ? null : _paths.Models[boxPart.Name].Controller;
        var fedBy = box?.Outputs.FirstOrDefault(o => outputs.Any(t => Names.Same(t.Part, boxPart!.Name) && Names.Same(t.Terminal, o.Terminal)));
        var inputs = fedBy is null ? [] : InputsOf(boxPart!, box!, new Expression.And(box!.Awake, fedBy.When));
        ImmutableArray<Operation.Set> woken = boxPart is null ? [] : Boxes.FirstOrDefault(b => b.Box == boxPart.Name)?.Do ?? [];
        bool IsOnThere(Frame f) => f.Outcome == Outcome.Settled && IsOn(f, seen.Name);
        ImmutableArray<string> usable = [.. near, .. _paths.ControlsNear(inputs, out _)];
        if ((_trials.Shortest(IsOnThere, woken, usable) ?? _trials.Shortest(IsOnThere, [], usable)) is not { } operations)
        {
            return null;
        }

        var routes = new Routes(_paths, After(operations));
        if (Through(routes, tie) is not { } through)
        {
            return null;
        }

        var output = through.Feed.SelectMany(t => new[] { t.A, t.B }).Where(IsOutput).Cast<TerminalRef?>().FirstOrDefault();
        var held = operations.Select(o => o.Control).ToImmutableArray();
        var controls = routes.OfControls(held, _rest, output is null ? [tie.A, tie.B] : inputs);
        var reach = Routes.Of(through.Feed.Reverse()).With(new Reach([seen.Part], [])).With(Routes.Of(through.Back)).With(controls);
        return new Line(NameOf(seen, output is null ? null : fedBy), [seen.Name], operations, reach, News.Of(_paths, tie, output is null ? null : fedBy, reach, [.. held.Where(IsMomentary)]))
        {
            Box = output is null ? null : boxPart!.Name,
            Output = output,
        };
    }

    private (ImmutableArray<Tie> Feed, ImmutableArray<Tie> Back)? Through(Routes routes, Tie load)
    {
        bool IsFeed(TerminalRef t) => t.Equals(_paths.Feed) || IsOutput(t);
        foreach (var (a, b) in new[] { (load.A, load.B), (load.B, load.A) })
        {
            if (routes.Way(a, IsFeed) is { } feed && routes.Way(b, t => t.Equals(_paths.Return)) is { } back)
            {
                return (feed, back);
            }
        }

        return null;
    }

    private string NameOf(Seen seen, Output? output) =>
        _paths.Loom.Functions.FirstOrDefault(f => f.Shows.Any(s => Names.Same(s.What, seen.Name)))?.Name ?? output?.Name ?? seen.Name;

    private bool IsOf(Seen seen, Part part, Element element) => _paths.Models[part.Name].Sights.Any(s =>
        Names.Same(seen.Name, s.Name.Length == 0 ? part.Name : $"{part.Name}.{s.Name}")
        && Names.Same(element.Name, s.Element));

    private bool IsOutput(TerminalRef at) => _paths.Models.GetValueOrDefault(at.Part)?.Controller is { } box && box.Outputs.Any(o => Names.Same(o.Terminal, at.Terminal));

    private Dictionary<string, string> After(ImmutableArray<Operation.Set> operations)
    {
        var at = new Dictionary<string, string>(_rest, Names.Comparer);
        foreach (var operation in operations)
        {
            at[operation.Control] = operation.Position;
        }

        return at;
    }

    private static ImmutableArray<TerminalRef> InputsOf(Part part, Controller box, Expression condition)
    {
        var names = condition.NamesUsed().ToHashSet(Names.Comparer);
        return [.. box.Inputs.Where(i => names.Contains(i.Name)).Select(i => new TerminalRef(part.Name, i.Terminal))];
    }

    private static bool IsOn(Frame frame, string seen) => frame.Seen.Any(s => s.Name == seen && s.Symbol is not (Symbol.Dark or Symbol.Silent or Symbol.Rests));
}

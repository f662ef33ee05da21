using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Sizing;

/// <summary>
/// The most that each wire, fuse and load was seen to carry: over every combination of the controls that stay put, in each every
/// button pressed in turn. Where there are too many, over the one that draws most and all that differ from it in one control.
/// </summary>
internal sealed class Worst
{
    private const int MostCombinations = 64;

    private readonly Dictionary<string, Carried> _wires = new(Names.Comparer);
    private readonly Dictionary<string, Carried> _fuses = new(Names.Comparer);
    private readonly Dictionary<string, Carried> _cranking = new(Names.Comparer);
    private readonly HashSet<string> _starters;
    private readonly Rig _rig;
    private readonly ImmutableArray<Control> _buttons;

    public Worst(Loom loom)
    {
        _rig = new Rig(loom);
        _starters = loom.Parts.Where(p => Names.Same(p.Kind, "starter")).Select(p => p.Name).ToHashSet(Names.Comparer);
        var controls = loom.Parts.SelectMany(p => Kinds.Find(p.Kind)?.Build(p).Controls ?? []).ToList();
        _buttons = [.. controls.Where(c => c.Momentary)];
        var still = controls.Where(c => !c.Momentary).ToList();
        Everything = still.Aggregate(1.0, (n, c) => n * c.Positions.Length) <= MostCombinations;
        foreach (var combination in Everything ? All(still) : AroundTheHungriest(still))
        {
            Play(combination, withButtons: true);
        }

        Charge(loom, still);
    }

    /// <summary>False when there were more combinations than were tried.</summary>
    public bool Everything { get; }

    /// <summary>Every load that took current, by its name as seen, at its most.</summary>
    public Dictionary<string, (Seen Seen, Frame Frame, Carried Carried)> Loads { get; } = new(Names.Comparer);

    /// <summary>What a wire carries while no starter turns.</summary>
    public Carried Wire(string name) => _wires.GetValueOrDefault(name, Carried.Nothing);

    /// <summary>What it carries while one does.</summary>
    public Carried Cranking(string name) => _cranking.GetValueOrDefault(name, Carried.Nothing);

    public Carried Fuse(string part) => _fuses.GetValueOrDefault(part, Carried.Nothing);

    private static IEnumerable<ImmutableArray<Operation.Set>> All(List<Control> controls)
    {
        IEnumerable<ImmutableArray<Operation.Set>> all = [[]];
        foreach (var control in controls)
        {
            all = all.SelectMany(done => control.Positions.Select(p => Names.Same(p, control.Rest) ? done : done.Add(new Operation.Set(control.Name, p)))).ToList();
        }

        return all;
    }

    // One control after the other to where the supply gives most with every fuse whole, twice round.
    private ImmutableArray<Operation.Set> Hungriest(List<Control> controls)
    {
        var now = ImmutableArray<Operation.Set>.Empty;
        foreach (var control in controls.Concat(controls))
        {
            now = control.Positions.Select(p => With(now, control, p)).MaxBy(Draws)!;
        }

        return now;
    }

    private IEnumerable<ImmutableArray<Operation.Set>> AroundTheHungriest(List<Control> controls)
    {
        var most = Hungriest(controls);
        return controls.SelectMany(c => c.Positions.Select(p => With(most, c, p))).Where(c => !c.SequenceEqual(most)).Prepend(most);
    }

    private static ImmutableArray<Operation.Set> With(ImmutableArray<Operation.Set> now, Control control, string position)
    {
        var others = now.RemoveAll(s => Names.Same(s.Control, control.Name));
        return Names.Same(position, control.Rest) ? others : others.Add(new Operation.Set(control.Name, position));
    }

    private double Draws(ImmutableArray<Operation.Set> combination)
    {
        var frame = Play(combination, withButtons: false);
        return frame.Phases.IsEmpty || frame.Fuses.Any(f => f.State == FuseState.Blown) ? -1 : frame.Phases[0].Supply.Amps;
    }

    // A full battery takes next to nothing from what charges it; one that is run down takes all of it through the same wires.
    private void Charge(Loom loom, List<Control> still)
    {
        const double runDownVolts = 11.8;
        var rig = new Rig(loom with { Parts = [.. loom.Parts.Select(p => Names.Same(p.Kind, "battery") ? p with { Settings = p.Settings.With("rest voltage", new Value.Number(runDownVolts)) } : p)] });
        foreach (var set in still.SelectMany(c => c.Positions.Select(p => new Operation.Set(c.Name, p))))
        {
            rig.Reset();
            var frame = rig.Do(set);
            NoteWiresAndFuses(frame, [frame.Step]);
        }
    }

    private Frame Play(ImmutableArray<Operation.Set> combination, bool withButtons)
    {
        var steps = ImmutableArray<string>.Empty;
        var frame = _rig.Reset();
        Note(frame, steps);
        foreach (var operation in combination.Concat(withButtons ? _buttons.SelectMany(PressAndRelease) : []))
        {
            frame = _rig.Do(operation);
            steps = steps.Add(frame.Step);
            Note(frame, steps);
        }

        return frame;
    }

    private static IEnumerable<Operation.Set> PressAndRelease(Control control) =>
        control.Positions.Where(p => !Names.Same(p, control.Rest)).Append(control.Rest).Select(p => new Operation.Set(control.Name, p));

    private void Note(Frame frame, ImmutableArray<string> steps)
    {
        NoteWiresAndFuses(frame, steps);
        foreach (var seen in frame.Seen)
        {
            if (Math.Abs(seen.Current.Amps) > (Loads.TryGetValue(seen.Name, out var before) ? before.Carried.Amps : 0.01))
            {
                Loads[seen.Name] = (seen, frame, new Carried(Math.Abs(seen.Current.Amps), steps));
            }
        }
    }

    private void NoteWiresAndFuses(Frame frame, ImmutableArray<string> steps)
    {
        var cranks = frame.Seen.Any(s => s.Symbol == Symbol.Turns && _starters.Contains(s.Part));
        foreach (var phase in frame.Phases)
        {
            foreach (var wire in phase.Wires)
            {
                Keep(cranks ? _cranking : _wires, wire.Wire, wire.Current.Amps, steps);
            }
        }

        foreach (var fuse in frame.Fuses)
        {
            Keep(_fuses, fuse.Part, fuse.Current.Amps, steps);
        }
    }

    private static void Keep(Dictionary<string, Carried> most, string name, double amps, ImmutableArray<string> steps)
    {
        // What is larger only in its last bits came with steps that do not matter.
        if (Math.Abs(amps) > (most.GetValueOrDefault(name, Carried.Nothing).Amps * 1.001) + 1e-6)
        {
            most[name] = new Carried(Math.Abs(amps), steps);
        }
    }
}

/// <summary>The most that was seen, and the operations from rest that led to it.</summary>
internal sealed record Carried(double Amps, ImmutableArray<string> Steps)
{
    public static Carried Nothing { get; } = new(0, []);
}

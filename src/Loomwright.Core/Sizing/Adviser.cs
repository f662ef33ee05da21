using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Sizing;

/// <summary>Puts together what flows, what guards and what the rule allows.</summary>
internal sealed class Adviser(Loom loom, AmpacityRule rule)
{
    // A lead-acid battery at rest, for what cold lamps take and what a share of the supply is.
    private const double SupplyVolts = 12.6;

    private readonly Guards _guards = new(loom);
    private readonly Worst _worst = new(loom);
    private readonly DropLimit _limit = DropLimit.Of(loom.Conditions);
    private readonly double[] _longest = new double[loom.Wires.Length];
    private readonly double[] _longestAbove = new double[loom.Wires.Length];
    private readonly double[] _starting = new double[loom.Wires.Length];

    public Sized Answer()
    {
        var circuits = Circuits().ToImmutableArray();
        Measure(circuits);
        var wires = loom.Wires.Select((w, i) => Size(w, i)).ToImmutableArray();
        return new Sized(rule, wires, [.. _guards.Fuses.Select((f, i) => Size(f, i, wires))], circuits, _worst.Everything);
    }

    private WireSized Size(Wire wire, int place)
    {
        var guard = _guards.Of(place);
        var around = Verdict.Around(loom, wire);
        var most = _worst.Wire(wire.Name);
        var cranking = _worst.Cranking(wire.Name).Amps;
        var heat = Heat.Of(wire.Size, around, rule);
        var settled = heat.Settled(most.Amps);
        var (enough, reason) = Enough(place, wire, around, Stands(place, guard), most.Amps, cranking);
        return new WireSized(
            wire,
            new Current(most.Amps),
            most.Steps,
            new Current(cranking),
            around,
            cranking > most.Amps ? heat.After(settled, cranking, WireLimit.StartSeconds) : settled,
            heat.By,
            guard,
            guard is { Band: { } band, Rating.Amps: var rating } ? FuseAgainstWire.Of(band, rating, heat) : null,
            Verdict.Standing(wire.Size, around, rule),
            enough,
            reason);
    }

    // A lead no fuse stands before must stand the one it feeds, or on the supply's return what comes back of a fault behind it.
    private (Guard Guard, string Words)? Stands(int wire, Guard? guard) =>
        guard is not null ? (guard, $" and behind {guard.InWords}")
        : _guards.FedBy(wire) is { } feeds ? (feeds, $" and to feed {feeds.InWords}")
        : _guards.BringsBack(wire) is { } back ? (back, $" and to bring back what {back.InWords} lets pass")
        : null;

    // In metres, there and back or the longer of the two as the limit counts: the longest circuit through each wire, the longest that loses too much, and the starter's.
    private void Measure(ImmutableArray<CircuitSized> circuits)
    {
        foreach (var circuit in circuits)
        {
            var (there, back) = _guards.Circuit(circuit.Load);
            var isStart = loom.Part(_worst.Loads[circuit.Load].Seen.Part)?.Kind == "starter";
            foreach (var way in isStart || _limit.IsBothWays ? [[.. there, .. back]] : new[] { there, back })
            {
                var metres = way.Sum(w => loom.Wires[w].Length.Metres);
                foreach (var wire in way)
                {
                    Lengthen(isStart ? _starting : _longest);
                    if (!isStart && !circuit.IsWithin)
                    {
                        Lengthen(_longestAbove);
                    }

                    void Lengthen(double[] longest) => longest[wire] = Math.Max(longest[wire], metres);
                }
            }
        }
    }

    private (CrossSection? Size, string Reason) Enough(int place, Wire wire, Surroundings around, (Guard Guard, string Words)? stands, double amps, double cranking)
    {
        var isStart = _starting[place] > 0 && cranking > amps;
        var carries = Sold.Wires.Where(s => Verdict.Standing(s, around, rule) is { } a && (a.Carries ?? a.Fuse).Amps >= amps && (stands is not { } must || Verdict.Passes(a, must.Guard))
            && (!isStart || Starts(s, around, amps, cranking))).ToList();
        var asked = $"{new Current(amps)}{(isStart ? $", ten seconds of {new Current(cranking)}" : "")}{stands?.Words}";
        if (carries.Count == 0)
        {
            return (null, $"No size up to {Sold.Wires[^1]} carries {asked} by {rule.Name}.");
        }

        var running = Running(place, wire, amps);
        var starting = isStart ? Loses(wire, _starting[place], cranking, Starter.Limit, $"{new Voltage(Starter.Limit)} while starting ({Starter.Source}, from memory)") : running;
        var (loses, words) = MoreThan(starting.Size, running.Size) ? starting : running;
        if (MoreThan(loses, carries[0]))
        {
            return (loses, $"{loses?.ToString() ?? $"No size up to {Sold.Wires[^1]}"} {words}.");
        }

        var allowed = Verdict.Standing(carries[0], around, rule)!;
        var figure = allowed.Carries is { } carried ? $"carries {carried.Printed}" : $"stands a fuse of {allowed.Fuse.Printed}";
        return (carries[0], $"{carries[0]} {figure} by {allowed.Rule.Name}{Read(allowed)}: enough for {asked}.");
    }

    private bool Starts(CrossSection size, Surroundings around, double amps, double cranking)
    {
        var heat = Heat.Of(size, around, rule);
        return heat.After(heat.Settled(amps), cranking, WireLimit.StartSeconds).Celsius <= around.Insulation.Celsius;
    }

    // Of the circuits through it that lose too much the longest counts; where none does, no more is asked than it has.
    private (CrossSection? Size, string Words) Running(int place, Wire wire, double amps)
    {
        var (above, longest) = (_longestAbove[place], _longest[place]);
        var asked = Loses(wire, above > 0 ? above : longest, amps, _limit.Limit * SupplyVolts, Owners);
        return above == 0 && longest > 0 && MoreThan(asked.Size, wire.Size) ? (wire.Size, $"does: every circuit through it stays within {Owners}") : asked;
    }

    // Its share by length of what a circuit so long may lose; where no load's way leads through it, all of one way.
    private (CrossSection? Size, string Words) Loses(Wire wire, double metres, double amps, double volts, string limit)
    {
        var (share, part) = metres > 0 ? (wire.Length.Metres / metres, $"its share by length ({wire.Length} of {new Length(metres)}) of") : _limit.IsBothWays ? (0.5, "half of") : (1, "all of");
        return (DropLimit.Thinnest(Sold.Wires.Select(s => Conductor.For(s).Row), new Current(amps), wire.Length, new Voltage(volts * share))?.Size, $"loses no more than {part} {limit} at {new Current(amps)}");
    }

    private static bool MoreThan(CrossSection? one, CrossSection? other) => other is { } than && (one is null || one.Value.SquareMillimetres > than.SquareMillimetres);

    private static DropLimit Starter => DropLimit.All.First(l => l.Circuit == "starter main cable");

    private string Owners => $"{new Share(_limit.Limit)} ({_limit.Source})";

    private static string Read(Allowance allowed) => allowed.SizeTaken.EndsWith("AWG", StringComparison.Ordinal) ? $" (read at {allowed.SizeTaken})" : "";

    private FuseSized Size(Guard fuse, int place, ImmutableArray<WireSized> wires)
    {
        var weakest = wires.Where(w => w.Guard == fuse && w.Allowed is not null).MinBy(w => Verdict.Largest(w.Allowed!, fuse.Kind).Amps);
        var before = _guards.Before(place);
        var main = before.IsEmpty ? null : _guards.Fuses[before[^1]];
        var cold = _guards.ColdAmps(place, SupplyVolts);
        return new FuseSized(
            fuse,
            new Current(_worst.Fuse(fuse.Part).Amps),
            weakest?.Wire.Name,
            weakest is null ? null : Verdict.Largest(weakest.Allowed!, fuse.Kind),
            main?.Part,
            main is null ? null : Selectivity.LostFrom(fuse.Band!, fuse.Rating.Amps, main.Band!, main.Rating.Amps, _guards.MostAmps),
            new Current(cold),
            Inrush.MayOpen(fuse.Band!, fuse.Rating.Amps, cold));
    }

    private IEnumerable<CircuitSized> Circuits()
    {
        if (loom.Parts.Select(p => (p.Name, Kinds.Find(p.Kind)?.Build(p).Supply)).FirstOrDefault(p => p.Supply is not null) is not { Supply: { } supply, Name: var name })
        {
            yield break;
        }

        foreach (var (load, (seen, frame, carried)) in _worst.Loads.Where(l => !_guards.IsDimmed(l.Key)))
        {
            var volts = At(frame, new TerminalRef(name, supply.Plus)) - At(frame, new TerminalRef(name, supply.Minus));
            var lost = volts - Math.Abs(seen.Voltage.Volts);
            var drop = _limit.Counted(lost, ReturnVolts(seen, frame) - At(frame, new TerminalRef(name, supply.Minus)));
            yield return new CircuitSized(load, new Current(carried.Amps), new Voltage(drop), drop / volts, _limit);
        }
    }

    // At the end of a load that its return begins at.
    private double ReturnVolts(Seen seen, Frame frame)
    {
        var model = Kinds.Find(loom.Part(seen.Part)!.Kind)!.Build(loom.Part(seen.Part)!);
        var sight = model.Sights.First(s => s.Name.Length == 0 || seen.Name.EndsWith("." + s.Name, StringComparison.Ordinal));
        var element = model.Elements.First(e => e.Name == sight.Element);
        return Math.Min(At(frame, new TerminalRef(seen.Part, element.From)), At(frame, new TerminalRef(seen.Part, element.To)));
    }

    private static double At(Frame frame, TerminalRef terminal) => frame.Phases[0].Potentials.First(p => p.Terminal == terminal).Potential.Volts;
}

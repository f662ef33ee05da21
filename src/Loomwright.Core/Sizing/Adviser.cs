using System.Collections.Immutable;
using System.Globalization;
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

    // How long a start takes (judgement).
    private const double CrankingSeconds = 10;

    // Sold by the reel (common practice, no source).
    private static readonly ImmutableArray<CrossSection> Sold = [.. new[] { 0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50 }.Select(mm => new CrossSection(mm))];

    private readonly Guards _guards = new(loom);
    private readonly Worst _worst = new(loom);
    private readonly DropLimit _limit = DropLimit.Of(loom.Conditions);

    public Sized Answer()
    {
        var wires = loom.Wires.Select((w, i) => Size(w, i)).ToImmutableArray();
        return new Sized(rule, wires, [.. _guards.Fuses.Select((f, i) => Size(f, i, wires))], [.. Circuits()], _worst.Everything);
    }

    private WireSized Size(Wire wire, int place)
    {
        var guard = _guards.Of(place);
        var around = Verdict.Around(loom, wire);
        var most = _worst.Wire(wire.Name);
        var cranking = _worst.Cranking(wire.Name).Amps;
        var heat = Heat.Of(wire.Size, around, rule);
        var settled = heat.Settled(most.Amps);
        var (enough, reason) = Enough(wire, around, Stands(place, guard), most.Amps, cranking);
        return new WireSized(
            wire,
            new Current(most.Amps),
            most.Steps,
            new Current(cranking),
            around,
            cranking > most.Amps ? heat.After(settled, cranking, CrankingSeconds) : settled,
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

    private (CrossSection? Size, string Reason) Enough(Wire wire, Surroundings around, (Guard Guard, string Words)? stands, double amps, double cranking)
    {
        var carries = Sold.Where(s => Verdict.Standing(s, around, rule) is { } a && (a.Carries ?? a.Fuse).Amps >= amps && (stands is not { } must || Verdict.Passes(a, must.Guard))).ToList();
        var place = stands?.Words ?? "";
        if (carries.Count == 0)
        {
            return (null, $"No size up to {Sold[^1]} carries {new Current(amps)}{place} by {rule.Name}.");
        }

        var (current, most, words) = cranking > amps ? (cranking, Starter.Limit, $"{new Voltage(Starter.Limit)} while starting ({Starter.Source}, from memory)") : (amps, _limit.Limit * OneWire * SupplyVolts, OfLimit);
        var loses = DropLimit.Thinnest(Sold.Select(s => Conductor.For(s).Row), new Current(current), wire.Length, new Voltage(most))?.Size;
        if (loses is null || loses.Value.SquareMillimetres > carries[0].SquareMillimetres)
        {
            return (loses, $"{loses?.ToString() ?? $"No size up to {Sold[^1]}"} loses no more than {words} on this wire alone, {wire.Length} at {new Current(current)}.");
        }

        var allowed = Verdict.Standing(carries[0], around, rule)!;
        var figure = allowed.Carries is { } carried ? $"carries {carried.Printed}" : $"stands a fuse of {allowed.Fuse.Printed}";
        return (carries[0], $"{carries[0]} {figure} by {allowed.Rule.Name}{Read(allowed)}: enough for {new Current(amps)}{place}.");
    }

    private static DropLimit Starter => DropLimit.All.First(l => l.Circuit == "starter main cable");

    // Both ways are two wires at the least.
    private double OneWire => _limit.IsBothWays ? 0.5 : 1;

    private string OfLimit => string.Create(CultureInfo.InvariantCulture, $"{(_limit.IsBothWays ? "half of " : "")}{_limit.Limit * 100:0.#} % ({_limit.Source})");

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

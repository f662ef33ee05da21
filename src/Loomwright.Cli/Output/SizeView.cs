using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Sizing;

namespace Loomwright.Output;

/// <summary>Sizes for a person: wires, what to change and why, fuses, what the wiring takes from each load.</summary>
internal static class SizeView
{
    public static void Write(Screen screen, Sized sized)
    {
        screen.Line($"By {sized.Rule.Name}: {sized.Rule.Holds} ({sized.Rule.Source}; {sized.Rule.Basis}).");
        var wires = Columns.Under("wire", "size", "at most", "warms to", "behind", "may be", "enough");
        foreach (var wire in sized.Wires)
        {
            wires.Row(
                wire.Wire.Name,
                wire.Wire.Size.ToString(),
                wire.Cranking.Amps > wire.Most.Amps ? $"{wire.Most}, starting {wire.Cranking}" : wire.Most.ToString(),
                wire.Warmest.ToString(),
                wire.Guard?.InWords ?? "no fuse",
                wire.LargestGuard?.Printed ?? "no rule",
                wire.Enough?.ToString() ?? "none");
        }

        screen.Show(wires, "No wire of this design could be read.");
        foreach (var thin in sized.Wires.Where(w => w.IsThin || w.Enough is null))
        {
            screen.Item($"· {thin.Wire.Name}", thin.Reason);
        }

        Fuses(screen, sized);
        Circuits(screen, sized);
        screen.Line("“At most” is the largest current found" + (sized.EveryCombination ? "" : "; there were too many positions to try them all") + ". Computed from the file; your bike was not measured.");
    }

    private static void Fuses(Screen screen, Sized sized)
    {
        var fuses = Columns.Under("fuse", "at most", "its wires allow", "opens alone", "all lamps cold");
        foreach (var fuse in sized.Fuses)
        {
            fuses.Row(
                fuse.Guard.InWords,
                fuse.Most.ToString(),
                fuse is { Largest: { } largest, WeakestWire: { } wire } ? $"{largest.Printed} ({wire})" : "",
                fuse.OpensAlone ?? "",
                $"{fuse.ColdAmps.Printed}{(fuse.ColdMayOpen ? ", may open it" : "")}");
        }

        screen.Show(fuses);
        foreach (var line in sized.Fuses.Select(f => f.StandsCold).OfType<string>())
        {
            screen.Line($"Good to know, nothing to change: {line}");
        }
    }

    private static void Circuits(Screen screen, Sized sized)
    {
        var circuits = Columns.Under("load", "at most", "lost both ways", "of the supply", "");
        foreach (var circuit in sized.Circuits)
        {
            circuits.Row(Words.Name(circuit.Load), circuit.Current.ToString(), circuit.Drop.ToString(), new Share(circuit.Share).ToString(), circuit.IsWithin ? "" : "above the limit");
        }

        screen.Show(circuits);
        if (!sized.Circuits.IsEmpty)
        {
            screen.Line($"The limit: {new Share(sized.Circuits[0].Limit.Limit)} {sized.Circuits[0].Limit.Span}, {sized.Circuits[0].Limit.Source}.");
        }
    }
}

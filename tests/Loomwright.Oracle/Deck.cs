using System.Globalization;
using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Oracle;

/// <summary>
/// A circuit as a netlist of the general simulator. Every straight branch b has a voltage source vb in it, so that its
/// current is an unknown of its own and no difference of two potentials; bent curves are behavioural sources bb of the
/// same law, without such a source: their slope falls to 1e−9 S in mid-run, and the simulator keeps its first pivots.
/// </summary>
public static class Deck
{
    /// <param name="circuit">What to write.</param>
    /// <param name="tolerance">Relative, in amps and in volts: when the simulator takes a point as arrived.</param>
    /// <param name="start">Where the simulator begins, node by node; it still has to arrive by its own equations.</param>
    public static string[] Of(Circuit circuit, double tolerance, ReadOnlySpan<double> start = default)
    {
        var lines = new List<string> { "* network" };
        for (var b = 0; b < circuit.Branches.Length; b++)
        {
            lines.AddRange(Lines(circuit.Branches[b], b));
        }

        for (var n = 1; n < start.Length; n++)
        {
            if (Names(circuit, n))
            {
                lines.Add(Text($".nodeset v({Node(n)})={start[n]:R}"));
            }
        }

        var saved = Enumerable.Range(0, circuit.Branches.Length).Where(b => HasCurrent(circuit.Branches[b])).Select(b => Current(circuit, b));
        lines.Add(".save all " + string.Join(' ', saved));
        lines.Add(Text($".options reltol={tolerance} abstol={tolerance / 1000} vntol={tolerance} gmin=1e-18 itl1=100 gminsteps=0 srcsteps=0"));
        lines.Add(".end");
        return [.. lines];
    }

    /// <summary>Whether any line names this node: one with nothing but open ends is not in the simulator's circuit.</summary>
    public static bool Names(Circuit circuit, int node) =>
        circuit.Branches.Any(branch => (branch.From == node || branch.To == node) && branch.Curve is not Open);

    /// <summary>Whether a branch has a current in the simulator's result.</summary>
    public static bool HasCurrent(Branch branch) => branch.Curve is not (Open or FixedCurrent);

    /// <summary>The simulator's name for a branch's current.</summary>
    public static string Current(Circuit circuit, int b) =>
        circuit.Branches[b].Curve is Ohms or Source or FixedVoltage ? Text($"v{b}#branch") : Text($"@b{b}[i]");

    private static IEnumerable<string> Lines(Branch branch, int b)
    {
        var (from, to, mid) = (Node(branch.From), Node(branch.To), Text($"x{b}"));
        var volts = Text($"V({from},{to})");
        return branch.Curve switch
        {
            Open => [],
            FixedCurrent c => [Text($"I{b} {from} {to} dc {c.Amps:R}")],
            FixedVoltage v => [Text($"V{b} {from} {to} dc {v.Volts:R}")],
            Ohms r => [Sense(0), Text($"R{b} {mid} {to} {r.ResistanceOhms:R}")],
            Source s => [Sense(s.EmfVolts), Text($"R{b} {mid} {to} {s.SeriesOhms:R}")],
            Cells c => [Bent(Text($"({volts}-{Number(c.EmfVolts)})/({volts}>{Number(c.EmfVolts)} ? {c.ChargingOhms:R} : {c.SeriesOhms:R})"))],
            Filament f => [Bent(Text($"{f.Watts / f.RatedVolts:R}*({volts}/{f.RatedVolts:R})*pow(({volts}/{f.RatedVolts:R})*({volts}/{f.RatedVolts:R})+{Math.Pow(f.HotOverCold, -1 / 0.225):R},-0.225)"))],
            Diode d => [Bent(Text($"{d.OnSiemens * d.KneeVolts:R}*({SoftPlus($"(({volts}-{Number(d.ForwardVolts)})/{Number(d.KneeVolts)})")}-{SoftPlus(-d.ForwardVolts / d.KneeVolts):R})+{d.OffSiemens:R}*{volts}"))],
            DriverLed d => [Bent(Driver(d, volts))],
            LimitedSource s => [Bent(Limited(s, volts))],
            var other => throw new InvalidOperationException(other.ToString()),
        };

        string Sense(double dc) => Text($"V{b} {from} {mid} dc {dc:R}");
        string Bent(string law) => Text($"B{b} {from} {to} I={law}");
    }

    private static string Driver(DriverLed d, string volts)
    {
        var w = Math.Min(d.StartVolts, d.DropOutVolts - d.StartVolts) / 20;
        var scale = d.RatedAmps * w / (d.DropOutVolts - d.StartVolts);
        var start = SoftPlus($"(({volts}-{Number(d.StartVolts)})/{Number(w)})");
        var end = SoftPlus($"(({volts}-{Number(d.DropOutVolts)})/{Number(w)})");
        return Text($"{scale:R}*({start}-{end}-{SoftPlus(-d.StartVolts / w) - SoftPlus(-d.DropOutVolts / w):R})+{d.LeakSiemens:R}*{volts}");
    }

    private static string Limited(LimitedSource s, string volts)
    {
        var drop = s.SeriesOhms * s.LimitAmps;
        var above = $"({volts}-{Number(s.Volts)})";
        var start = SoftPlus($"(({above}+{Number(drop)})/{Number(drop / 50)})");
        var end = SoftPlus($"({above}/{Number(drop / 50)})");
        return Text($"{s.LimitAmps / 50:R}*({start}-{end})-{s.LimitAmps:R}+{s.SlopeSiemens:R}*{above}");
    }

    private static string SoftPlus(string z) => $"(max({z},0)+ln(1+exp(-abs({z}))))";

    private static double SoftPlus(double z) => Math.Max(z, 0) + Math.Log(1 + Math.Exp(-Math.Abs(z)));

    private static string Node(int node) => node == 0 ? "0" : Text($"n{node}");

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}

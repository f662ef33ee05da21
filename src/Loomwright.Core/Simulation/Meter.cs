using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Network;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Simulation;

/// <summary>A hand meter across two terminals; it is a branch like any other.</summary>
internal static class Meter
{
    /// <summary>Input resistance of a common digital meter on volts.</summary>
    public const double InputOhms = 10e6;

    /// <summary>Continuity: common meters beep below 30 to 50 Ω (common practice, no source).</summary>
    public const double BeepsBelowOhms = 30;

    // On ohms: half a volt behind a kilohm, too little to open a diode; above 40 MΩ it shows no path.
    private const double TestVolts = 0.5;
    private const double TestOhms = 1000;
    private const double NoPathOhms = 40e6;

    /// <summary>What it shows between a point and the reference whose volts without it are known, with the ohms it sees there.</summary>
    public static double Shows(double volts, double ohms) => volts * (InputOhms / (InputOhms + ohms));

    public static Voltage? Volts(Wiring wiring, State state, TerminalRef red, TerminalRef black)
    {
        if (wiring.NodeOf(red) is not { } from || wiring.NodeOf(black) is not { } to)
        {
            return null;
        }

        var electrics = new Electrics(wiring with { Links = wiring.Links.Add(new Link("", "meter", from, to, new Ohms(InputOhms))) });
        return electrics.Solve(state, between: false) ? new Voltage(electrics.Volts[from] - electrics.Volts[to]) : null;
    }

    // Black is the reference here: with the supply off, the bike's own may hang on nothing.
    public static Resistance? Ohms(Wiring wiring, State state, TerminalRef red, TerminalRef black)
    {
        if (wiring.NodeOf(red) is not { } from || wiring.NodeOf(black) is not { } to)
        {
            return null;
        }

        if (from == to)
        {
            return new Resistance(0);
        }

        int Turned(int node) => node == to ? 0 : node == 0 ? to : node;
        var off = PowerOff(wiring, state);
        var links = wiring.Links.Select((link, l) => link with
        {
            From = Turned(link.From),
            To = Turned(link.To),
            Curve = wiring.Supplies.Contains(l) ? new Open() : link.Curve,
        }).Append(new Link("", "meter", Turned(from), 0, new Source(TestVolts, TestOhms)));
        var electrics = new Electrics(wiring with { Links = [.. links] });
        if (!electrics.Solve(off, between: false))
        {
            return null;
        }

        var amps = -electrics.Amps[^1];
        var ohms = amps > 0 ? electrics.Volts[Turned(from)] / amps : double.PositiveInfinity;
        return ohms <= NoPathOhms ? new Resistance(Math.Max(ohms, 0)) : null;
    }

    private static State PowerOff(Wiring wiring, State state) => state with
    {
        Boxes = new Row<BoxState>([.. wiring.Boxes.Select(b => BoxState.Lifeless(b.InputNodes.Length, b.OutputLinks.Length))]),
    };
}

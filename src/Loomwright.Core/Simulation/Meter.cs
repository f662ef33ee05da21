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

    // Between two pins of a box, for want of what is really there (judgement).
    private const double InsideOhms = 100e3;

    /// <summary>What it shows between a point and the reference whose volts without it are known, with the ohms it sees there.</summary>
    public static double Shows(double volts, double ohms) => volts * (InputOhms / (InputOhms + ohms));

    public static Voltage? Volts(Wiring wiring, State state, TerminalRef red, TerminalRef black) =>
        VoltsFlow(wiring, state, red, black) is { } flow ? new Voltage(flow.Volts[wiring.NodeOf(red)!.Value] - flow.Volts[wiring.NodeOf(black)!.Value]) : null;

    /// <summary>What then flows, the meter's own microamps in it; null when a terminal is not there or the network found no answer.</summary>
    public static Picture? VoltsFlow(Wiring wiring, State state, TerminalRef red, TerminalRef black)
    {
        if (wiring.NodeOf(red) is not { } from || wiring.NodeOf(black) is not { } to)
        {
            return null;
        }

        var electrics = new Electrics(wiring with { Links = wiring.Links.Add(new Link("", "meter", from, to, new Ohms(InputOhms))) });
        return electrics.Solve(state, between: false) ? electrics.Copy() : null;
    }

    public static Resistance? Ohms(Wiring wiring, State state, TerminalRef red, TerminalRef black) => Test(wiring, state, red, black)?.Ohms;

    /// <summary>The same with what then flows; null when a terminal is not there or the network found no answer.</summary>
    public static OhmTest? Test(Wiring wiring, State state, TerminalRef red, TerminalRef black) =>
        wiring.NodeOf(red) is { } from && wiring.NodeOf(black) is { } to ? from == to ? new OhmTest(new Resistance(0), null) : Test(wiring, PowerOff(wiring, state), from, to) : null;

    /// <summary>
    /// Whether a way between two points leads through electronics alone, with the supply off: what is inside a load controller or
    /// a button block differs from make to make, and its pins may read anything from kilohms up where none is computed.
    /// </summary>
    public static bool IsThroughElectronics(Wiring wiring, State state, TerminalRef red, TerminalRef black)
    {
        var inside = wiring.Boxes.Select(b => b.Part).Concat(wiring.Blocks.Select(b => b.Part))
            .Select(part => wiring.Points.Where(p => Text.Names.Same(p.Terminal.Part, part)).ToList())
            .SelectMany(pins => pins.Skip(1).Select(pin => new Link("", "inside", pins[0].Node, pin.Node, new Ohms(InsideOhms))));
        return Ohms(wiring, state, red, black) is null && Ohms(wiring with { Links = wiring.Links.AddRange(inside) }, state, red, black) is not null;
    }

    // Black is the reference here: with the supply off, the bike's own may hang on nothing.
    private static OhmTest? Test(Wiring wiring, State off, int from, int to)
    {
        int Turned(int node) => node == to ? 0 : node == 0 ? to : node;
        var links = wiring.Links.ToBuilder();
        for (var l = 0; l < links.Count; l++)
        {
            var (link, (a, b)) = (links[l], (Turned(links[l].From), Turned(links[l].To)));
            links[l] = a == link.From && b == link.To ? link : link with { From = a, To = b };
        }

        foreach (var supply in wiring.Supplies)
        {
            links[supply] = links[supply] with { Curve = new Open() };
        }

        links.Add(new Link("", "meter", Turned(from), 0, new Source(TestVolts, TestOhms)));
        var electrics = new Electrics(wiring with { Links = links.ToImmutable() });
        if (!electrics.Solve(off, between: false))
        {
            return null;
        }

        var amps = -electrics.Amps[^1];
        var ohms = amps > 0 ? electrics.Volts[Turned(from)] / amps : double.PositiveInfinity;
        var flows = electrics.Copy();
        (flows.Volts[0], flows.Volts[to]) = (flows.Volts[to], flows.Volts[0]);
        return new OhmTest(ohms <= NoPathOhms ? new Resistance(Math.Max(ohms, 0)) : null, flows);
    }

    /// <summary>What it sends through so many ohms; through nothing where there is no path.</summary>
    public static double TestAmps(double? ohms) => ohms is { } some ? TestVolts / (TestOhms + some) : 0;

    /// <summary>A state with the supply off: boxes lifeless, relays let go.</summary>
    public static State PowerOff(Wiring wiring, State state) => state with
    {
        Relays = Row.Of(wiring.Relays.Length, false),
        Flashers = Row.Of(wiring.Flashers.Length, false),
        Boxes = new Row<BoxState>([.. wiring.Boxes.Select(b => BoxState.Lifeless(b.InputNodes.Length, b.OutputLinks.Length))]),
    };
}

/// <summary>What an ohmmeter shows, and the picture behind it with the bike's own nodes; no picture between two names of one point.</summary>
internal sealed record OhmTest(Resistance? Ohms, Picture? Flows);

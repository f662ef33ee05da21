using System.Collections.Frozen;
using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>
/// A loom with its names turned into numbers: nodes, links between them, controls, boxes, fuses, and what is seen.
/// Node 0 is the minus terminal of the battery, or of the bench supply when it alone feeds the stage.
/// </summary>
internal sealed record Wiring
{
    /// <summary>What it was made from.</summary>
    public required Loom Loom { get; init; }

    /// <summary>Every terminal in file order, then every wire end that sits on no terminal of a part.</summary>
    public required ImmutableArray<Point> Points { get; init; }

    /// <summary>Nodes, points inside parts and the reference included.</summary>
    public required int NodeCount { get; init; }

    /// <summary>Wires in file order, then the parts' elements, then shorts.</summary>
    public required ImmutableArray<Link> Links
    {
        get;
        init
        {
            field = value;
            Colds = [.. Enumerable.Range(0, value.Length).Where(l => value[l].Cold is not null)];
        }
    }

    /// <summary>Everything a hand can operate, in file order.</summary>
    public required ImmutableArray<Control> Controls { get; init; }

    /// <summary>The load controllers, in file order.</summary>
    public required ImmutableArray<Box> Boxes { get; init; }

    /// <summary>The fuses, in file order.</summary>
    public required ImmutableArray<FusePlace> Fuses { get; init; }

    /// <summary>The relays, in file order.</summary>
    public required ImmutableArray<RelayPlace> Relays { get; init; }

    /// <summary>What flashes by itself, in file order.</summary>
    public required ImmutableArray<FlasherPlace> Flashers { get; init; }

    /// <summary>The button blocks with electronics, in file order.</summary>
    internal required ImmutableArray<BlockPlace> Blocks { get; init; }

    /// <summary>Whatever a person can tell, in file order.</summary>
    public required ImmutableArray<SightPlace> Sights { get; init; }

    /// <summary>Places of the links that are supplies: the battery's or bench supply's first, what charges after it.</summary>
    public required ImmutableArray<int> Supplies { get; init; }

    /// <summary>Places of the links that draw more in their first milliseconds.</summary>
    public ImmutableArray<int> Colds { get; private init; } = [];

    /// <summary>The parts and the models they were built to, in file order.</summary>
    public required ImmutableArray<PartPlace> Parts { get; init; }

    /// <summary>Every named point's node, points inside parts included.</summary>
    public required FrozenDictionary<TerminalRef, int> Nodes { get; init; }

    /// <summary>The wiring of a loom. What cannot be used (an unknown kind, a gate that names nothing) is left out; the file's findings tell of it.</summary>
    public static Wiring Of(Loom loom) => new Compiling(loom).Finish();

    /// <summary>The node of a terminal, or null when nothing of that name is there.</summary>
    public int? NodeOf(TerminalRef terminal) => Nodes.TryGetValue(terminal, out var node) ? node : null;

    /// <summary>The circuit with every link as it conducts when nothing is switched off.</summary>
    public Circuit Circuit() => new(NodeCount, [.. Links.Select(l => new Branch(l.From, l.To, l.Curve))]);

    /// <summary>Power just connected, every control at rest, nothing remembered, every lamp cold.</summary>
    public State Start() => new(
        new Row<int>([.. Controls.Select(c => PlaceOf(c, c.Rest) ?? 0)]),
        new Row<BoxState>([.. Boxes.Select(b => BoxState.Lifeless(b.InputNodes.Length, b.OutputLinks.Length))]),
        Row.Of(Fuses.Length, false),
        Row.Of(Colds.Length, false),
        Row.Of(Relays.Length, false),
        Row.Of(Flashers.Length, false));

    /// <summary>A position's place in its control, or null.</summary>
    public static int? PlaceOf(Control control, string position)
    {
        for (var i = 0; i < control.Positions.Length; i++)
        {
            if (Text.Names.Same(control.Positions[i], position))
            {
                return i;
            }
        }

        return null;
    }
}

/// <summary>A part and its model.</summary>
internal sealed record PartPlace(string Name, Model Model);

/// <summary>A terminal and its node.</summary>
public readonly record struct Point(TerminalRef Terminal, int Node);

/// <summary>A fuse: its part, its link, what is printed on it.</summary>
internal sealed record FusePlace(string Part, int Link, double RatingAmps)
{
    /// <summary>How long it stands how much.</summary>
    public required FuseBand Band { get; init; }

    /// <summary>A breaker's button that closes it again, by its place among the controls and the position it is pressed in; null for a fuse.</summary>
    public (int Control, int Pressed)? Button { get; init; }

    /// <summary>The flasher of a breaker that closes by itself; null for all others.</summary>
    public int? Cycle { get; init; }
}

/// <summary>A relay: its part, the links that are its windings, and when it moves.</summary>
internal sealed record RelayPlace(string Part, ImmutableArray<int> Coils, Relay Facts);

/// <summary>A flasher: its part, the link that is its contact, and how it goes.</summary>
internal sealed record FlasherPlace(string Part, int Link, Flasher Facts);

/// <summary>A button block: the nodes of its data terminals (the second −1 unless it is a bus), the relay that tells whether it is fed, its buttons among the controls.</summary>
internal sealed record BlockPlace(string Part, int Data, int Second, int Electronics, ImmutableArray<int> Buttons);

/// <summary>Something to see or hear: its name, its part, the link it comes from.</summary>
internal sealed record SightPlace(string Name, string Part, int Link, Sight Sight);

/// <summary>A load controller with its names turned into numbers.</summary>
/// <param name="Part">The owner's name.</param>
/// <param name="Facts">As its manual describes it.</param>
/// <param name="SupplyNode">What it lives on …</param>
/// <param name="GroundNode">… and against what it reads its inputs.</param>
/// <param name="InputNodes">By the order of its inputs.</param>
/// <param name="OutputLinks">The link that carries each output's load current, or −1 when there is none.</param>
/// <param name="OutputNodes">By the order of its outputs.</param>
/// <param name="Lights">Each status light: the place of its input or output, or −1, and its node.</param>
/// <param name="Rules">Its awake condition first, then each output's.</param>
/// <param name="InputOf">Place of each input a rule names.</param>
internal sealed record Box(
    string Part,
    Controller Facts,
    int SupplyNode,
    int GroundNode,
    ImmutableArray<int> InputNodes,
    ImmutableArray<int> OutputLinks,
    ImmutableArray<int> OutputNodes,
    ImmutableArray<LightPlace> Lights,
    Evaluator Rules,
    FrozenDictionary<string, int> InputOf)
{
    /// <summary>Nodes of its data terminals; −1 where there is none.</summary>
    public (int First, int Second) Data { get; init; } = (-1, -1);

    /// <summary>The same box with nothing alive in it, whatever its supply.</summary>
    public Box Dead() => this with { Facts = Facts with { ResetsBelowVolts = double.PositiveInfinity } };
}

/// <summary>A status light: where it sits and what it follows.</summary>
internal readonly record struct LightPlace(string Terminal, LightMeans Means, int Place, int Node);

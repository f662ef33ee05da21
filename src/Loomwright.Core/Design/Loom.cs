using System.Collections.Immutable;
using Loomwright.Expressions;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Design;

/// <summary>What the owner has: parts, wires and what is promised of them. An immutable value; two equal looms behave alike.</summary>
public sealed record Loom
{
    /// <summary>The bike's name.</summary>
    public required string Name { get; init; }

    /// <summary>The owner's own words about the bike, or null.</summary>
    public string? Notes { get; init; }

    /// <summary>Which battery side is joined to the frame. Default: negative.</summary>
    public GroundSide Ground { get; init; }

    public Conditions Conditions { get; init; } = Conditions.Default;

    public ImmutableArray<Place> Places { get; init; } = [];

    public ImmutableArray<Distance> Distances { get; init; } = [];

    public ImmutableArray<Part> Parts { get; init; } = [];

    public ImmutableArray<Wire> Wires { get; init; } = [];

    public ImmutableArray<Function> Functions { get; init; } = [];

    public ImmutableArray<StandIn> StandIns { get; init; } = [];

    /// <summary>Where the boxes of the picture stand.</summary>
    public Placing Placing { get; init; } = Placing.None;

    /// <summary>Contacts nobody drew: a strand across two terminals, a chafed wire. Empty in a design as read from a file.</summary>
    public ImmutableArray<Short> Shorts { get; init; } = [];

    /// <summary>The part of that name, or null.</summary>
    public Part? Part(string name) => Parts.FirstOrDefault(p => Names.Same(p.Name, name));

    /// <summary>The wire of that name, or null.</summary>
    public Wire? Wire(string name) => Wires.FirstOrDefault(w => Names.Same(w.Name, name));
}

/// <summary>The battery side that is joined to the frame.</summary>
public enum GroundSide
{
    Negative,
    Positive,
}

/// <summary>What the surroundings are taken to be. Defaults: 20 °C, 105 °C insulation, 3 % drop over feed and return together, country unset.</summary>
/// <param name="Ambient">Air around the loom; wire resistance is computed at it.</param>
/// <param name="Insulation">Temperature class of the wire's insulation.</param>
/// <param name="AmpacityRule">Name of the rule the owner sizes by, or null.</param>
/// <param name="DropShare">Largest share of the supply voltage lost in the wiring, 0…1.</param>
/// <param name="Country">For notes that depend on law, or null when unset.</param>
public sealed record Conditions(Temperature Ambient, Temperature Insulation, string? AmpacityRule, double DropShare, string? Country)
{
    /// <summary>Loaded wires that run together, 1 or more. Default 1.</summary>
    public int Bundle { get; init; } = 1;

    /// <summary>Over what <c>DropShare</c> is taken.</summary>
    public DropSpan DropSpan { get; init; } = DropSpan.BothWays;

    public static Conditions Default { get; } = new(new Temperature(20), new Temperature(105), null, 0.03, null);
}

/// <summary>Over what a drop limit is taken.</summary>
public enum DropSpan
{
    /// <summary>The way to the load and the way back together.</summary>
    BothWays,

    /// <summary>Each of the two by itself.</summary>
    OneWay,
}

/// <summary>A place on the bike or the bench.</summary>
/// <param name="Key">The short name wires and parts use.</param>
/// <param name="Name">How it is called on screen.</param>
/// <param name="Heat">Cool +0 K, warm +15 K, hot +40 K above ambient (judgement, no source).</param>
/// <param name="MovesWith">What it moves with (<c>steering</c>), or null when it is still.</param>
public sealed record Place(string Key, string Name, Heat Heat, string? MovesWith);

/// <summary>How warm a place gets.</summary>
public enum Heat
{
    Cool,
    Warm,
    Hot,
}

/// <summary>The way a wire runs between two places.</summary>
public sealed record Distance(string A, string B, Length Length);

/// <summary>One part the owner has.</summary>
/// <param name="Name">The owner's name, unique in the loom.</param>
/// <param name="Kind">The kind's name, as in <c>list kinds</c>.</param>
/// <param name="Place">Key of its place, or null.</param>
/// <param name="Settings">What the kind asks for, read and in SI units.</param>
public sealed record Part(string Name, string Kind, string? Place, Settings Settings)
{
    /// <summary>All that is wrong with it, in the order it came about; nothing in a design as read from a file.</summary>
    public ImmutableArray<Defect> Defects { get; init; } = [];
}

/// <summary>A terminal of a part: what a wire end sits on.</summary>
/// <param name="Part">The owner's name of the part.</param>
/// <param name="Terminal">The mark printed on the case or the lead's name; empty for a part that is one point (splice, stud).</param>
public readonly record struct TerminalRef(string Part, string Terminal)
{
    /// <summary><c>part.terminal</c>, or the part alone when it is one point.</summary>
    public override string ToString() => Terminal.Length == 0 ? Part : $"{Part}.{Terminal}";

    public bool Equals(TerminalRef other) => Names.Same(Part, other.Part) && Names.Same(Terminal, other.Terminal);

    public override int GetHashCode() => HashCode.Combine(Names.Comparer.GetHashCode(Part), Names.Comparer.GetHashCode(Terminal));
}

/// <summary>One wire.</summary>
/// <param name="Name">Unique: given by the owner or derived from its ends.</param>
/// <param name="From">The first end; current is positive from here.</param>
/// <param name="To">The second end.</param>
/// <param name="Size">Nominal cross-section.</param>
/// <param name="Colour">Insulation colour, or null when unknown.</param>
/// <param name="Length">Length, given or worked out from the places.</param>
/// <param name="FromEnd">How the first end is made (<c>crimp pin</c>), or null.</param>
/// <param name="ToEnd">How the second end is made, or null.</param>
public sealed record Wire(string Name, TerminalRef From, TerminalRef To, CrossSection Size, WireColour? Colour, Length Length, string? FromEnd, string? ToEnd)
{
    /// <summary>What a bad joint in it adds; none in a design as read from a file.</summary>
    public Resistance Extra { get; init; }

    /// <summary>True when the name was made from the ends, not given.</summary>
    public bool NameIsDerived { get; init; }

    /// <summary>True when the length was worked out from the places, not given.</summary>
    public bool LengthIsDerived { get; init; }
}

/// <summary>Insulation colour: base letters and an optional tracer, in IEC 60757 letters (<c>GN/WH</c>).</summary>
public readonly record struct WireColour(string Base, string? Tracer)
{
    public override string ToString() => Tracer is null ? Base : $"{Base}/{Tracer}";
}

/// <summary>What the bike promises: when it works, and what a person then sees.</summary>
/// <param name="Name">The owner's name.</param>
/// <param name="Works">The condition over control positions.</param>
/// <param name="Shows">What must be seen while it works.</param>
/// <param name="May">What may be seen besides.</param>
public sealed record Function(string Name, Expression Works, ImmutableArray<Show> Shows, ImmutableArray<Show> May);

/// <summary>Something to see or hear.</summary>
/// <param name="What">A part, or <c>part.element</c>, or <c>all lamps</c>.</param>
/// <param name="Symbol">lit, dim, dark, flashing, sounds, turns, …</param>
public sealed record Show(string What, string Symbol);

/// <summary>On the bench, one thing stands in for another.</summary>
/// <param name="This">What is used: <c>a lead</c>, <c>a 21 W lamp</c>.</param>
/// <param name="For">The part it replaces.</param>
public sealed record StandIn(string This, string For);

/// <summary>Two terminals that touch.</summary>
public sealed record Short(TerminalRef A, TerminalRef B, Resistance Resistance);

/// <summary>What is wrong with a part.</summary>
public abstract record Defect
{
    private Defect()
    {
    }

    /// <summary>Nothing conducts inside it any more, or one thing in it does not.</summary>
    /// <param name="Inside">What it is called (a lamp's filament, a box's output by its terminal), or null for all of it.</param>
    public sealed record Dead(string? Inside = null) : Defect;

    /// <summary>Its plus and minus leads are exchanged.</summary>
    public sealed record Reversed : Defect;

    /// <summary>Its contacts stay as they are in that position, whatever its control or coil does.</summary>
    /// <param name="Control">The control they follow, or null for the contacts of a coil.</param>
    public sealed record Stuck(string? Control, string At) : Defect;

    /// <summary>Its contacts leak when open.</summary>
    public sealed record Leaks(Resistance Resistance) : Defect;

    /// <summary>Its metal no longer touches what it sits on, or only through some resistance.</summary>
    /// <param name="Resistance">Null: not at all.</param>
    public sealed record Loose(Resistance? Resistance) : Defect;
}

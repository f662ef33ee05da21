using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>How much may be lost in the wiring of one kind of circuit, by one source. There is no single limit.</summary>
/// <param name="Circuit">What it is for.</param>
/// <param name="Limit">Volts, a share 0…1 of the supply, or ohms, as <paramref name="Unit"/> says.</param>
/// <param name="Span">Over what it is taken.</param>
public sealed record DropLimit(string Circuit, double Limit, DropUnit Unit, string Span, string Source, bool FromMemory = false)
{
    private const string Faa = "FAA AC 43.13-1B ch. 11";
    private const string FaaTable = "FAA AC 43.13-1B table 11-6";
    private const string Boat = "ABYC E-11 as quoted on a public page";
    private const string Marine = "public marine cable guide";
    private const string Vehicle = "vehicle handbook practice";
    private const string Workshop = "workshop practice (bench voltage-drop test)";
    private const string Both = "both ways";
    private const string EachWay = "one-way";
    private const string Lead = "positive lead";

    /// <summary>Every limit there is.</summary>
    public static ImmutableArray<DropLimit> All { get; } =
    [
        new("main power wires from generator or battery to the bus", 0.02, DropUnit.Share, EachWay, Faa),
        new("ground return through structure", 0.005, DropUnit.Ohms, "return path", Faa),
        new("load circuits, 14 V system, continuous", 0.5, DropUnit.Volts, "bus to load and ground", FaaTable, FromMemory: true),
        new("load circuits, 14 V system, intermittent", 1, DropUnit.Volts, "bus to load and ground", FaaTable, FromMemory: true),
        new("load circuits, 28 V system, continuous", 1, DropUnit.Volts, "bus to load and ground", FaaTable, FromMemory: true),
        new("load circuits, 28 V system, intermittent", 2, DropUnit.Volts, "bus to load and ground", FaaTable, FromMemory: true),
        new("critical circuits (main feeders, navigation lights, bilge)", 0.03, DropUnit.Share, Both, Boat),
        new("other circuits", 0.1, DropUnit.Share, Both, Boat),
        new("navigation lights", 0.05, DropUnit.Share, Both, Marine),
        new("other circuits", 0.07, DropUnit.Share, Both, Marine),
        new("lamps up to 15 W", 0.1, DropUnit.Volts, Lead, Vehicle, FromMemory: true),
        new("lamps above 15 W", 0.5, DropUnit.Volts, Lead, Vehicle, FromMemory: true),
        new("headlamps", 0.3, DropUnit.Volts, Lead, Vehicle, FromMemory: true),
        new("generator to battery", 0.4, DropUnit.Volts, "positive lead at rated current, 12 V system", Vehicle, FromMemory: true),
        new("starter main cable", 0.5, DropUnit.Volts, "at short-circuit current, 20 degC", Vehicle, FromMemory: true),
        new("starter solenoid control", 1.4, DropUnit.Volts, Lead, Vehicle, FromMemory: true),
        new("regulator sense lead", 0.1, DropUnit.Volts, Lead, Vehicle, FromMemory: true),
        new("relays, horn, other consumers", 0.5, DropUnit.Volts, Lead, Vehicle, FromMemory: true),
        new("one clean switch, fuse holder or plug contact", 0.1, DropUnit.Volts, "contact to contact under load", Workshop, FromMemory: true),
        new("ground path, whole", 0.2, DropUnit.Volts, "load to battery negative under load", "workshop practice", FromMemory: true),
    ];

    /// <summary>The limit an owner wrote or left at the usual 3 % both ways; with its source where one prints the same.</summary>
    public static DropLimit Of(Conditions conditions)
    {
        var span = conditions.DropSpan == DropSpan.BothWays ? Both : EachWay;
        return All.FirstOrDefault(l => l.Unit == DropUnit.Share && l.Span == span && l.Limit == conditions.DropShare)
            ?? new DropLimit("every circuit", conditions.DropShare, DropUnit.Share, span, "the design's own drop limit");
    }

    /// <summary>True when the way there and the way back count together, false when each counts by itself.</summary>
    public bool IsBothWays => Span == Both;

    /// <summary>What counts against it of all that is lost, when so much of it is lost on the way back.</summary>
    public double Counted(double lost, double back) => IsBothWays ? lost : Math.Max(lost - back, back);

    /// <summary>The first conductor, from thin to thick, that loses no more than this over a length; null when even the thickest does.</summary>
    public static ConductorRow? Thinnest(IEnumerable<ConductorRow> rows, Current current, Length length, Voltage most) =>
        rows.FirstOrDefault(r => r.OhmsPerMetre * length.Metres * current.Amps <= most.Volts);
}

/// <summary>What a drop limit is stated in.</summary>
public enum DropUnit
{
    Volts,
    Share,
    Ohms,
}

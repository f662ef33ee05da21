using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Bench;

/// <summary>How the meter is set and held.</summary>
internal static class MeterCards
{
    public static MeterCard Volts(Site site, TerminalRef red, TerminalRef black) => Volts(site.Mark(red), site.Mark(black));

    public static MeterCard Volts(Mark red, Mark black) =>
        new(Dial.Volts, "V Ω", "COM", red, black, "Range 20 V. Tips together first: 0.00 V.", PowerOn: true);

    /// <summary>The probes the way round that the meter shows no minus.</summary>
    public static (TerminalRef Red, TerminalRef Black, Voltage Volts) Upright(TerminalRef red, TerminalRef black, Voltage volts) =>
        volts.Volts < 0 ? (black, red, new Voltage(-volts.Volts)) : (red, black, volts);

    /// <summary>Touched at a battery or supply while ohms are read: never its post.</summary>
    public const string Clip = "the clip for ";

    /// <summary>The same on the bike: the lead that was taken off the post.</summary>
    public const string TakenOff = "the lead of ";

    /// <summary>What is touched at a part that a lead stands in for: the end of the wire that would go there.</summary>
    public static string InPlace(Site? site, TerminalRef at) => site?.Whole.Loom.Part(at.Part) is { } part && StandIns.CanBeLead(site.Whole.Loom, part.Name)
        && (site.StandIns.ContainsKey(part.Name) || (Hand.IsOfTheEngine(site, part) && Hand.IsWired(site, at))) ? "the wire for " : "";

    public static MeterCard Ohms(Mark red, Mark black, Band band) => new(Dial.Ohms, "V Ω", "COM", red, black, First(band), PowerOn: false);

    // For a meter ranged by hand: too small a range shows OL, too large a one shows 0 for what is not.
    private static string First(Band band) => band switch
    {
        { Least: >= Bands.NoReadingOhms } => "Highest Ω range.",
        { Most: null or >= 200 and < 2e3 } => "Range 2 kΩ.",
        { Most: >= 2e3 and < 2e4 } => "Range 20 kΩ.",
        { Most: >= 2e4 } => "Range 200 kΩ.",
        _ => "Range 200 Ω. Tips together first: take that reading off.",
    };
}

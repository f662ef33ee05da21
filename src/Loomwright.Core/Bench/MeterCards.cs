using Loomwright.Design;

namespace Loomwright.Bench;

/// <summary>How the meter is set and held for volts.</summary>
internal static class MeterCards
{
    public static MeterCard Volts(Site site, TerminalRef red, TerminalRef black) =>
        new(Dial.Volts, "V Ω", "COM", site.Mark(red), site.Mark(black), "Range 20 V. Tips together first: 0.00 V.", PowerOn: true);
}

using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A disc horn (docs/models/horn.md).</summary>
internal static class HornKind
{
    // Below this share of its rated current the disc hardly moves (judgement, no source).
    private const double SoundsAboveShare = 0.6;

    private static readonly Amount Current = new("current", "What it takes at its rated volts.", Unit.Amp, 0.05, 50, 4);
    private static readonly Amount RatedVolts = new("rated volts", "The volts its current is stated at.", Unit.Volt, 1, 30, 12);

    public static Kind Kind { get; } = Mount.Able(new(
        "horn", "A disc horn.", [Current.Parameter, RatedVolts.Parameter, Marks.TwoParameter("terminals", "1", "2")], Build));

    private static Model Build(Part part)
    {
        var marks = Marks.Two(part.Settings, "terminals", "1", "2");
        var amps = Current.Of(part.Settings);
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements = [new Element("coil", marks.Known[0], marks.Known[1], new Ohms(RatedVolts.Of(part.Settings) / amps))],
            Sights = [new Sight.Horn("", "coil", amps * SoundsAboveShare)],
            Problems = marks.Problems,
        };
    }
}

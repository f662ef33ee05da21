using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A resistor: across an LED indicator, inside a lock (docs/models/resistor.md).</summary>
internal static class ResistorKind
{
    private static readonly Amount Resistance = new("resistance", "Printed on it.", Unit.Ohm, 0.01, 1e7);

    // Its plus and minus touch inside, as badly as a bad joint joins (judgement).
    private const string WornThrough = "0.5 ohm";

    public static Kind Kind { get; } = new(
        "resistor", "A resistor.", [Resistance.Parameter with { Required = true }, Marks.TwoParameter("terminals", "1", "2")], Build);

    private static Model Build(Part part)
    {
        var marks = Marks.Two(part.Settings, "terminals", "1", "2");
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements = [new Element("resistor", marks.Known[0], marks.Known[1], new Ohms(Resistance.Given(part.Settings) ?? 1000))],
            WrongSettings = [new WrongSetting(Resistance.Key, WornThrough, WrongSetting.Chosen)],
            Problems = marks.Problems,
        };
    }
}

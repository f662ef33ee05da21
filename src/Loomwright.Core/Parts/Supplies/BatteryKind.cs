using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A 12 V battery at rest: its open-circuit voltage behind its resistance (docs/models/battery.md).</summary>
internal static class BatteryKind
{
    private static readonly Pick Chemistry = new("chemistry", "What is in it: flooded or gel lead-acid, glass mat, or lithium iron phosphate.", ["lead-acid", "agm", "lifepo4"]) { Required = true };
    private static readonly Amount Capacity = new("capacity", "Printed capacity; the resistance follows from it.", Unit.AmpHour, 0.5, 200, 10);
    private static readonly Amount Charge = new("charge", "How full it is; the resting voltage follows from it.", Unit.Share, 0, 1, 1);
    private static readonly Amount RestVoltage = new("rest voltage", "Measured after an hour at rest; in place of the one from chemistry and charge.", Unit.Volt, 0, 20);
    private static readonly Amount Resistance = new("resistance", "Measured inside it; in place of the one from chemistry and capacity.", Unit.Ohm, 0.0005, 10);

    public static Kind Kind { get; } = new(
        "battery",
        "A 12 V battery.",
        [Chemistry.Parameter, Capacity.Parameter, Charge.Parameter, RestVoltage.Parameter, Resistance.Parameter],
        Build);

    private static Model Build(Part part)
    {
        var chemistry = Chemistry.Of(part.Settings);
        var emfVolts = RestVoltage.Given(part.Settings) ?? OpenCircuit.Volts(chemistry, Charge.Of(part.Settings));
        var ohms = Resistance.Given(part.Settings) ?? InsideOhms(chemistry, Capacity.Of(part.Settings));
        return new Model
        {
            Terminals = [new Terminal("+", Role.Plus), new Terminal("-", Role.Minus)],
            Elements = [new Element("cells", "+", "-", new Source(emfVolts, ohms))],
            Supply = new Supply("+", "-", "cells", null),
            Polarity = ("+", "-"),
            WrongSettings = [RestVoltage.Given(part.Settings) is null ? new WrongSetting(Charge.Key, "20 %", WrongSetting.Low) : new WrongSetting(RestVoltage.Key, "11.8 V", WrongSetting.Low)],
        };
    }

    // Inversely with size between the typical bounds (from memory): 8–20 mΩ lead-acid, 16 mΩ at 10 Ah; 4–10 mΩ lithium, 10 mΩ at 4 Ah.
    private static double InsideOhms(string chemistry, double ampHours) =>
        chemistry == "lifepo4" ? Math.Clamp(0.040 / ampHours, 0.004, 0.010) : Math.Clamp(0.160 / ampHours, 0.008, 0.020);
}

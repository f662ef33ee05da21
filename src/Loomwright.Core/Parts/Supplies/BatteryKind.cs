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
        var ampHours = Capacity.Of(part.Settings);
        var restVolts = RestVoltage.Given(part.Settings);
        var charge = restVolts is { } measured ? OpenCircuit.Charge(chemistry, measured) : Charge.Of(part.Settings);
        var emfVolts = restVolts ?? OpenCircuit.Volts(chemistry, charge);
        var ohms = Resistance.Given(part.Settings) ?? InsideOhms(chemistry, ampHours);
        var chargingOhms = Math.Max(ohms, ChargingOhms(chemistry, ampHours, charge));
        return new Model
        {
            Terminals = [new Terminal("+", Role.Plus), new Terminal("-", Role.Minus)],
            Elements = [new Element("cells", "+", "-", new Cells(emfVolts, ohms, chargingOhms))],
            Supply = new Supply("+", "-", "cells", null),
            Polarity = ("+", "-"),
            WrongSettings = [RestVoltage.Given(part.Settings) is null ? new WrongSetting(Charge.Key, "20 %", WrongSetting.Low) : new WrongSetting(RestVoltage.Key, "11.8 V", WrongSetting.Low)],
        };
    }

    // Inversely with size between the typical bounds (from memory): 8–20 mΩ lead-acid, 16 mΩ at 10 Ah; 4–10 mΩ lithium, 10 mΩ at 4 Ah.
    private static double InsideOhms(string chemistry, double ampHours) =>
        chemistry == "lifepo4" ? Math.Clamp(0.040 / ampHours, 0.004, 0.010) : Math.Clamp(0.160 / ampHours, 0.008, 0.020);

    // As many amps as amp-hours are missing (Woodbridge's law, 1935) once it is lifted 1.9 V above rest: a test published of
    // a 105 Ah glass mat battery, 14.4 V at 0.4 of its capacity an hour when 63 % full and at 0.2 when 77 %. Full, it still
    // takes some: 2 % of its capacity (published ends of charge: 0.5 to 5 %). Lithium: judgement, no source.
    private static double ChargingOhms(string chemistry, double ampHours, double charge) =>
        (chemistry == "lifepo4" ? 0.3 : 1.9) / (ampHours * Math.Max(1 - charge, 0.02));
}

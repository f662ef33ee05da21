using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A regulator that holds more volts than a lithium battery may be charged with.</summary>
internal static class ChargingAboveBattery
{
    // Four cells at 3.65 V (common practice, no source).
    private const double LithiumVolts = 14.6;

    public static Rule Rule { get; } = new(
        "charging-above-battery",
        Severity.Look,
        Severity.Look,
        "A regulator stated to hold more than a lithium battery may be charged with.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. from charging in study.Paths.Built
           where !charging.Model.Charging.IsEmpty
           let volts = charging.Part.Settings.Number("regulates at")
           where volts > LithiumVolts
           from battery in study.Loom.Parts
           where battery.Kind == "battery" && Names.Same(battery.Settings.Word("chemistry") ?? "", "lifepo4")
           select new Finding(
               Rule.Code,
               Severity.Look,
               new Subject.OfPart(charging.Part.Name),
               "{regulator} holds {volts}; {battery} is lithium iron phosphate and wants {most} at the most.",
               "Above that its own protection may cut it off while riding, and the regulator is then without a battery; without such protection the cells are overcharged.",
               "Measure the volts at the battery at some revolutions first. If they are right, fit a regulator made for this chemistry, or a battery that stands the volts.",
               [
                   Evidence.Of("regulator", charging.Part.Name),
                   Evidence.Of("volts", new Voltage(volts!.Value)),
                   Evidence.Of("battery", battery.Name),
                   Evidence.Of("most", new Voltage(LithiumVolts)),
               ]),
    ];
}

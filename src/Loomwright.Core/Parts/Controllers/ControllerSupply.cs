using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>What a load controller takes for itself, as resistances at 12 V.</summary>
internal static class ControllerSupply
{
    private const double AtVolts = 12;

    /// <summary>Common practice: 0–5 mA asleep, 0.05–0.1 A awake (no source).</summary>
    public static readonly Amount Standby = new("standby", "What it takes asleep, at 12 V.", Unit.Amp, 1e-6, 1, 0.002);

    public static readonly Amount AwakeDraw = new("awake draw", "What it takes awake without its loads, at 12 V.", Unit.Amp, 1e-5, 5, 0.06);

    public static ImmutableArray<Element> Elements(Settings settings, string supply, string ground)
    {
        var standbyAmps = Standby.Of(settings);
        var moreAmps = Math.Max(AwakeDraw.Of(settings) - standbyAmps, 1e-6);
        return
        [
            new Element("standby draw", supply, ground, new Ohms(AtVolts / standbyAmps)),
            new Element("awake draw", supply, ground, new Ohms(AtVolts / moreAmps)) { Gate = new Gate.WhileAwake() },
        ];
    }
}

using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Quantities;

namespace Loomwright.Tests.Diagnosis;

/// <summary>A bike as it stands in a workshop, drawn apart from the model: battery 11.8 to 12.8 V at rest, lamps within 10 % of their watts, every wire with contacts of its own (10 mΩ, log-normal with σ 0.7; judgement).</summary>
internal static class World
{
    private const double ContactOhms = 0.010, ContactSpread = 0.7;

    private static readonly string[] Watts = ["filament", "led"];

    /// <summary>The loom with everything drawn; a battery that a fault is about keeps what the fault says.</summary>
    public static Loom Drawn(Loom loom, Random random, params IEnumerable<Fault> faults)
    {
        var about = faults.OfType<Fault.Setting>().Select(f => f.Part).ToHashSet(Loomwright.Text.Names.Comparer);
        return loom with
        {
            Parts = [.. loom.Parts.Select(p => p with { Settings = p.Kind == "battery" && !about.Contains(p.Name) ? p.Settings.With("rest voltage", new Value.Number(11.8 + random.NextDouble())) : Lamps(p.Settings, random) })],
            Wires = [.. loom.Wires.Select(w => w with { Extra = new Resistance(w.Extra.Ohms + (ContactOhms * Math.Exp(ContactSpread * Normal(random)))) })],
        };
    }

    private static Settings Lamps(Settings settings, Random random) => new(
    [
        .. settings.Entries.Select(e => KeyValuePair.Create(e.Key, e.Value switch
        {
            Value.Number n when Watts.Contains(e.Key) => new Value.Number(n.Si * (0.9 + (0.2 * random.NextDouble()))),
            Value.Group group => new Value.Group(Lamps(group.Entries, random)),
            var other => other,
        })),
    ]);

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}

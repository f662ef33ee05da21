using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Faults;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>What a fault comes to in one stage before power: where it sits, and what the measurements show with it in.</summary>
/// <param name="stage">The stage, with the design of what is connected.</param>
public sealed class BeforePower(Stage stage)
{
    private readonly Ohmed _ohmed = new(stage, isWhole: false);

    /// <summary>Whether a fault sits at the wire or the part of that name: on one of its terminals.</summary>
    public bool IsAt(Fault fault, string thing)
    {
        var ends = Ends.Of(fault, _ohmed.Plugged);
        return ends.Any(e => Names.Same(e.Part, thing)) || (_ohmed.Plugged.Loom.Wire(thing) is { } wire && (ends.Contains(wire.From) || ends.Contains(wire.To)));
    }

    /// <summary>The steps that read outside their bands with the fault, each with the ohms a meter would show there; infinite where it shows nothing.</summary>
    public ImmutableDictionary<string, double> Outside(Fault fault) => _ohmed.Catching(fault, _ => true).ToImmutableDictionary(c => c.Step, c => c.Ohms, StringComparer.Ordinal);
}

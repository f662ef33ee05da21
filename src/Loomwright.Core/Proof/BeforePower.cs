using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>What the measurements before power of one stage come to with a fault in.</summary>
/// <param name="stage">The stage, with the design of what is connected.</param>
public sealed class BeforePower(Stage stage)
{
    private readonly Ohmed _ohmed = new(stage, isWhole: false);

    /// <summary>The steps that read outside their bands with the fault, each with the ohms a meter would show there; infinite where it shows nothing.</summary>
    public ImmutableDictionary<string, double> Outside(Fault fault) => _ohmed.Catching(fault, _ => true).ToImmutableDictionary(c => c.Step, c => c.Ohms, StringComparer.Ordinal);
}

using System.Collections.Immutable;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>What there is to see and to measure after one stimulus. Where something flashes, numbers are of its on-phase.</summary>
/// <param name="Outcome">How it settled.</param>
/// <param name="Signs">What a person tells of each observable, in their order; empty when the network found no answer.</param>
/// <param name="SupplyAmps">Delivered by all supplies together.</param>
/// <param name="Volts">At each point against battery minus, as a 10 MΩ meter there shows; empty when there is no answer.</param>
public sealed record Look(Outcome Outcome, ImmutableArray<byte> Signs, double SupplyAmps, ImmutableArray<double> Volts)
{
    /// <summary>Light of each lamp as a share of its full light, where it blinks of its darker phase; 0 for what gives none. In the order of the signs, which begin with them; empty when there is no answer.</summary>
    public ImmutableArray<float> Light { get; init; } = [];

    /// <summary>At each point, whether hardly anything holds it: what a meter shows there hangs on leaks nobody knows. Empty where all points are held.</summary>
    public ImmutableArray<bool> Floats { get; init; } = [];

    /// <summary>Whether what a meter shows between two points hangs on leaks nobody knows.</summary>
    /// <param name="red">Point of the red probe, by its place.</param>
    /// <param name="black">Point of the black one; null for battery minus.</param>
    public bool IsLoose(int red, int? black) => black is { } b && !Floats.IsEmpty && (Floats[red] || Floats[b]);

    /// <summary>Whether a person sees and hears the same.</summary>
    public bool LooksLike(Look other) => ReferenceEquals(this, other) || Signs.AsSpan().SequenceEqual(other.Signs.AsSpan());
}

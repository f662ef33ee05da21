using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>What the person answered to one question. Everything is against a <see cref="Dictionary.FaultTable"/> by its places.</summary>
/// <param name="Stimulus">What was done, by its place in the table.</param>
public abstract record Evidence(int Stimulus)
{
    /// <summary>The question it answers; answers to the same question have the same place.</summary>
    public (int Stimulus, int? Red, int? Black) Place => this switch
    {
        Measured measured => (Stimulus, measured.Red, measured.Black),
        NotSure unsure => (Stimulus, unsure.Red, unsure.Black),
        _ => (Stimulus, null, null),
    };

    /// <summary>What was seen and heard.</summary>
    /// <param name="Stimulus">What was done.</param>
    /// <param name="Signs">Each observable that was looked at, by its place, with its sign.</param>
    public sealed record Seen(int Stimulus, ImmutableArray<(int Observable, byte Sign)> Signs) : Evidence(Stimulus)
    {
        public bool Equals(Seen? other) => other is not null && Stimulus == other.Stimulus && Signs.SequenceEqual(other.Signs);

        public override int GetHashCode() => HashCode.Combine(Stimulus, Signs.Length);
    }

    /// <summary>What the meter showed.</summary>
    /// <param name="Stimulus">What was done.</param>
    /// <param name="Red">The point the red probe was on, by its place among the table's points.</param>
    /// <param name="Black">The point of the black probe; null for battery minus.</param>
    /// <param name="Volts">The reading, in volts, signed.</param>
    public sealed record Measured(int Stimulus, int Red, int? Black, double Volts) : Evidence(Stimulus);

    /// <summary>The person could not tell; it costs time and moves nothing.</summary>
    /// <param name="Stimulus">What was done.</param>
    /// <param name="Red">Of a measurement the point the red probe was to be on; null of a look.</param>
    /// <param name="Black">The point of the black probe.</param>
    public sealed record NotSure(int Stimulus, int? Red = null, int? Black = null) : Evidence(Stimulus);
}

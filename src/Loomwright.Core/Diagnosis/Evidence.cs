using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>What the person answered to one question. Everything is against a <see cref="Dictionary.FaultTable"/> by its places.</summary>
public abstract record Evidence
{
    private Evidence()
    {
    }

    /// <summary>The question it answers.</summary>
    public abstract Asked Place { get; }

    /// <summary>What was seen and heard.</summary>
    /// <param name="Stimulus">What was done.</param>
    /// <param name="Signs">Each observable that was looked at, by its place, with its sign.</param>
    public sealed record Seen(int Stimulus, ImmutableArray<(int Observable, byte Sign)> Signs) : Evidence
    {
        public override Asked Place => new(Stimulus);

        public bool Equals(Seen? other) => other is not null && Stimulus == other.Stimulus && Signs.SequenceEqual(other.Signs);

        public override int GetHashCode() => HashCode.Combine(Stimulus, Signs.Length);
    }

    /// <summary>What the meter showed.</summary>
    /// <param name="Stimulus">What was done.</param>
    /// <param name="Red">The point the red probe was on, by its place among the table's points.</param>
    /// <param name="Black">The point of the black probe; null for battery minus.</param>
    /// <param name="Volts">The reading, in volts, signed.</param>
    public sealed record Measured(int Stimulus, int Red, int? Black, double Volts) : Evidence
    {
        public override Asked Place => new(Stimulus, Red, Black);
    }

    /// <summary>What a check of the thing itself found.</summary>
    /// <param name="Check">The check.</param>
    /// <param name="Found">One of the <see cref="Trace.Found"/> of that check; null for all as designed.</param>
    public sealed record Checked(Check Check, string? Found) : Evidence
    {
        public override Asked Place => new(null, Check: Check);
    }

    /// <summary>The person could not tell; it costs time and moves nothing.</summary>
    /// <param name="About">What was asked.</param>
    public sealed record NotSure(Asked About) : Evidence
    {
        public override Asked Place => About;
    }

    /// <summary>The same with what was done at its place in a table.</summary>
    internal Evidence At(int stimulus) => this switch
    {
        Seen seen => seen with { Stimulus = stimulus },
        Measured measured => measured with { Stimulus = stimulus },
        NotSure unsure => new NotSure(unsure.About with { Stimulus = stimulus }),
        _ => this,
    };
}

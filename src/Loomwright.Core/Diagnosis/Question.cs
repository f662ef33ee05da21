namespace Loomwright.Diagnosis;

/// <summary>Something to do and look at, or to measure.</summary>
/// <param name="Stimulus">What is done, by its place in the table; null: nothing is operated, key off and main fuse out.</param>
/// <param name="Minutes">What it costs, switches and probes included.</param>
/// <param name="Bits">What it is expected to tell about the repair.</param>
public abstract record Question(int? Stimulus, double Minutes, double Bits)
{
    /// <summary>What it tells for a minute's work.</summary>
    public double Worth => Bits / Minutes;

    /// <summary>How likely its likeliest answer is, 0…1; 0 where that was not worked out.</summary>
    internal double Largest { get; init; }

    /// <summary>Its place; answers to it have the same.</summary>
    public abstract Asked Place { get; }

    /// <summary>Look at everything that shows.</summary>
    public sealed record Look(int At, double Minutes, double Bits) : Question(At, Minutes, Bits)
    {
        public override Asked Place => new(At);
    }

    /// <summary>Measure volts.</summary>
    /// <param name="At">What is done.</param>
    /// <param name="Red">The point of the red probe, by its place among the table's points.</param>
    /// <param name="Black">The point of the black probe; null for battery minus.</param>
    /// <param name="Minutes">What it costs.</param>
    /// <param name="Bits">What it tells.</param>
    public sealed record Volts(int At, int Red, int? Black, double Minutes, double Bits) : Question(At, Minutes, Bits)
    {
        public override Asked Place => new(At, Red, Black);
    }

    /// <summary>Look at a thing itself, or try it alone.</summary>
    public sealed record Of(Check Check, double Minutes, double Bits) : Question(null, Minutes, Bits)
    {
        public override Asked Place => new(null, Check: Check);
    }
}

/// <summary>What is asked for: answers to the same question have the same place.</summary>
/// <param name="Stimulus">What is done; null when nothing is operated.</param>
/// <param name="Red">Of a measurement, the point of the red probe.</param>
/// <param name="Black">And of the black one.</param>
/// <param name="Check">Of a check, which.</param>
public readonly record struct Asked(int? Stimulus, int? Red = null, int? Black = null, Check? Check = null)
{
    /// <summary>The question again, as a person has to do it once more.</summary>
    public Question Again() => this switch
    {
        { Check: { } check } => new Question.Of(check, check.Minutes, 0),
        { Red: { } red } => new Question.Volts(Stimulus!.Value, red, Black, Asking.ProbeMinutes, 0),
        _ => new Question.Look(Stimulus!.Value, Asking.LookMinutes, 0),
    };
}

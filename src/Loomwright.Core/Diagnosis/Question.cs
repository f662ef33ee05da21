namespace Loomwright.Diagnosis;

/// <summary>Something to do and look at, or to measure.</summary>
/// <param name="Stimulus">What is done, by its place in the table.</param>
/// <param name="Minutes">What it costs, switches and probes included.</param>
/// <param name="Bits">What it is expected to tell about the repair.</param>
public abstract record Question(int Stimulus, double Minutes, double Bits)
{
    /// <summary>What it tells for a minute's work.</summary>
    public double Worth => Bits / Minutes;

    /// <summary>Look at everything that shows.</summary>
    public sealed record Look(int Stimulus, double Minutes, double Bits) : Question(Stimulus, Minutes, Bits);

    /// <summary>Measure volts.</summary>
    /// <param name="Stimulus">What is done.</param>
    /// <param name="Red">The point of the red probe, by its place among the table's points.</param>
    /// <param name="Black">The point of the black probe; null for battery minus.</param>
    /// <param name="Minutes">What it costs.</param>
    /// <param name="Bits">What it tells.</param>
    public sealed record Volts(int Stimulus, int Red, int? Black, double Minutes, double Bits) : Question(Stimulus, Minutes, Bits);
}

using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>What one fault comes to in every stage that connects what it touches.</summary>
/// <param name="Stages">In order; a stage in which it touches nothing is left out.</param>
internal sealed record Evidence(Fault Fault, ImmutableArray<StageEvidence> Stages)
{
    /// <summary>Whether anything anywhere stands otherwise than without it, by more than a hand meter's last digits.</summary>
    public bool HasEffect => Stages.Any(s => s.HasEffect);

    /// <summary>Every different observation that tells it.</summary>
    public IEnumerable<(string What, string Step)> Observations => Stages.SelectMany(s => s.Observed).DistinctBy(o => o.What);
}

/// <summary>What one fault comes to in one stage.</summary>
/// <param name="Stage">Number of the stage.</param>
/// <param name="Ohms">Measurements before power that read outside their bands.</param>
/// <param name="Looks">Steps at which it is seen without a meter.</param>
/// <param name="Reads">Steps with a meter or ammeter that read outside their bands.</param>
/// <param name="Shows">The first moment with power at which it is seen or read, or null.</param>
/// <param name="Harm">What it harms at full power, over all moments, in the order met.</param>
/// <param name="HarmAt">The step with which that begins, or null.</param>
/// <param name="SmallHarmAt">The first moment at which it harms although only the small fuse is in, or null.</param>
/// <param name="HasEffect">Whether any point's volts differ by more than a hand meter's last digits.</param>
internal sealed record StageEvidence(
    int Stage,
    ImmutableArray<Ohmed.Caught> Ohms,
    ImmutableArray<string> Looks,
    ImmutableArray<string> Reads,
    int? Shows,
    ImmutableArray<HarmKind> Harm,
    string? HarmAt,
    int? SmallHarmAt,
    bool HasEffect)
{
    /// <summary>The step that shows it first once power is on.</summary>
    public string? ShowsAt { get; init; }

    /// <summary>Every observation that tells it, with what makes it its own: a reading by its step, looking by its stage.</summary>
    public IEnumerable<(string What, string Step)> Observed =>
        Ohms.Select(o => (o.Step, o.Step)).Concat(Looks.Take(1).Select(l => (string.Create(CultureInfo.InvariantCulture, $"look {Stage}"), l))).Concat(Reads.Select(r => (r, r)));

    /// <summary>Whether it shows before anything is harmed on the small fuse.</summary>
    public bool IsLimited => Shows is { } shows && (SmallHarmAt is not { } harm || shows < harm);
}

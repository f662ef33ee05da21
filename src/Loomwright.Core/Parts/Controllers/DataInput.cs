using System.Collections.Immutable;

namespace Loomwright.Parts;

/// <summary>Where a controller hears a button block.</summary>
/// <param name="Terminal">Its data terminal.</param>
/// <param name="Second">The other of a two-wire bus, or null.</param>
/// <param name="PullOhms">What holds a single data lead at supply.</param>
public sealed record DataInput(string Terminal, string? Second, double PullOhms)
{
    /// <summary>The resistor at each end of a bus; two of them make the 60 Ω one measures with power off (from memory).</summary>
    public const double BusEndOhms = 120;

    // So far apart that a fifth off still tells one from the next (judgement, no source).
    private const double FirstOhms = 330;
    private const double StepRatio = 1.8;

    /// <summary>What the button of that number in a resistor ladder has unless it is told.</summary>
    public static double UsualOhms(int number) => FirstOhms * Math.Pow(StepRatio, number - 1);
}

/// <summary>A block of buttons with electronics of its own.</summary>
/// <param name="Controls">Its buttons in the maker's order.</param>
/// <param name="Terminal">Its data terminal.</param>
/// <param name="Second">The other of a two-wire bus, or null.</param>
/// <param name="Electronics">The relay that stands for its electronics being fed.</param>
public sealed record ButtonBlock(ImmutableArray<string> Controls, string Terminal, string? Second, string Electronics);

/// <summary>The button behind an input.</summary>
/// <param name="Number">As the maker counts, from 1.</param>
/// <param name="LadderOhms">What it joins the data lead to ground through; null when the block tells it in its own way.</param>
public sealed record DataButton(int Number, double? LadderOhms);

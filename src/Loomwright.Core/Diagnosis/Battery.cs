using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>How the battery in the workshop stands beside the one written down: all answers of one search have the same.</summary>
internal static class Battery
{
    /// <summary>Shares of its rest voltage that are thought of, alike likely: 11.8 to 13 V where 12.8 V are written (judgement).</summary>
    public static readonly ImmutableArray<double> Shares = [0.92, 0.94, 0.96, 0.98, 1.0, 1.02];

    /// <summary>Place of the one that stands as written.</summary>
    public const int AsWritten = 4;

    /// <summary>Whether one that stands so low is itself what is to be mended where nothing else shows.</summary>
    public static bool IsToBeCharged(int place) => Shares[place] < 0.97;

    /// <summary>How much less likely that is where something else is thought of that leaves what was complained of as designed, as a logarithm (judgement).</summary>
    public static readonly double HardlyAnExcuse = Math.Log(0.03);

    /// <summary>Whether it may stand so, beside what the fault makes of it, where the fault is its own charge: that is never told to the point.</summary>
    public static bool GoesWithItsFault(int place) => Shares[place] is >= 0.96 and <= 1;

    /// <summary>By how much likelier each of these is then, as a logarithm.</summary>
    public static readonly double MoreWithItsFault = Math.Log((double)Shares.Length / Enumerable.Range(0, Shares.Length).Count(GoesWithItsFault));
}

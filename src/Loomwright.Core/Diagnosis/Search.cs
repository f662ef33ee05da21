using System.Collections.Immutable;

namespace Loomwright.Diagnosis;

/// <summary>Where the search stands.</summary>
public enum Search
{
    /// <summary>There is a question worth asking.</summary>
    GoesOn,

    /// <summary>One repair is at least 0.95 likely, and two answers speak for it or there is nothing left to ask.</summary>
    Found,

    /// <summary>No question left tells the causes apart.</summary>
    CannotTellApart,

    /// <summary>The answers fit nothing in the list, also after the oddest was asked again.</summary>
    DoesNotFit,
}

/// <summary>Something that may be wrong, with what speaks for it.</summary>
/// <param name="Repair">What sets it right.</param>
/// <param name="Share">How likely by the answers, 0…1.</param>
/// <param name="Hypotheses">What it may be in detail, the likeliest first.</param>
public sealed record Suspect(string Repair, double Share, ImmutableArray<Hypothesis> Hypotheses)
{
    /// <summary>The share as a person says it.</summary>
    public string InWords => Share switch
    {
        >= 0.95 => "almost certain",
        >= 0.7 => "very likely",
        >= 0.4 => "likely",
        >= 0.1 => "possible",
        _ => "unlikely",
    };
}

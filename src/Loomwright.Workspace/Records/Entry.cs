namespace Loomwright.Records;

/// <summary>A stretch of work along a plan, by one person with one meter, on the design as it stood when it began.</summary>
/// <param name="Id">Unique; chosen by whoever began it.</param>
/// <param name="Bike">The design's path in the folder.</param>
/// <param name="Design">Hash of the design's bytes; its whole text is kept under it.</param>
/// <param name="Plan">Which plan: <see cref="OnTheBench"/>, <see cref="OnTheBike"/>, or <see cref="Search"/>.</param>
/// <param name="Fault">Text id of the fault put in on purpose, or null.</param>
/// <param name="Who">Who does it, as they call themselves; may be empty.</param>
/// <param name="Meter">Which meter, as they call it; may be empty.</param>
/// <param name="Began">When, with the offset of the place.</param>
public sealed record BenchSession(string Id, string Bike, string Design, string Plan, string? Fault, string Who, string Meter, DateTimeOffset Began)
{
    /// <summary>The staged plan on the bench.</summary>
    public const string OnTheBench = "bench";

    /// <summary>The plan for the finished loom on the bike.</summary>
    public const string OnTheBike = "bike";

    /// <summary>No plan: a search for a cause, whose entries are all <see cref="EntryKind.Asked"/> and what takes one of them back.</summary>
    public const string Search = "search";

    /// <summary>Names the plan's steps as they were when it began: the SHA-256 of what is kept of them. Null in a session from before they were kept.</summary>
    public string? Steps { get; init; }
}

/// <summary>What somebody did, saw or read at a step.</summary>
public enum EntryKind
{
    /// <summary>The step is done.</summary>
    Done,

    /// <summary>It was as expected, or not, or they are not sure.</summary>
    Seen,

    /// <summary>A number from the meter.</summary>
    Reading,

    /// <summary>Hot, smoke or smell.</summary>
    Hot,

    /// <summary>Something was changed at the loom; the last check counts no more.</summary>
    Changed,

    /// <summary>An earlier entry is taken back.</summary>
    Undo,

    /// <summary>The loom is built as the design says.</summary>
    Built,

    /// <summary>An answer given in a search for a cause.</summary>
    Asked,
}

/// <summary>How what was seen or read stands to what was expected.</summary>
public enum Verdict
{
    /// <summary>Nothing was expected.</summary>
    None,

    /// <summary>As expected; inside the band.</summary>
    AsExpected,

    /// <summary>Not as expected; outside the band.</summary>
    Not,

    /// <summary>They are not sure.</summary>
    NotSure,

    /// <summary>It is not a number in the unit asked for; the words are kept.</summary>
    Unreadable,
}

/// <summary>One row of the record. Never altered once kept; undo is a row of its own.</summary>
/// <param name="Id">Unique; made where the answer was given, so that handing it over twice keeps it once.</param>
/// <param name="Session">The session it belongs to.</param>
/// <param name="Step">Id of the plan's step.</param>
/// <param name="Kind">What kind of thing it is.</param>
/// <param name="About">The wire, the part or the terminal the step is about; empty when none.</param>
/// <param name="What">Which of the step's expectations, in its own words; empty when all of them. Of an answer in a search: what was told, in words.</param>
/// <param name="Raw">What was typed or pressed, unaltered.</param>
/// <param name="Value">The number in the base unit of <paramref name="Unit"/>; null when none was read.</param>
/// <param name="Unit">Name of the unit of the value and the band, or null.</param>
/// <param name="Least">Lower end of the band expected, or null.</param>
/// <param name="Most">Upper end of the band expected, or null.</param>
/// <param name="Verdict">How it stands to what was expected.</param>
/// <param name="Of">Id of the entry an undo takes back, or null.</param>
/// <param name="At">When it was given, by the clock of the device, with its offset.</param>
public sealed record Entry(
    string Id,
    string Session,
    string Step,
    EntryKind Kind,
    string About,
    string What,
    string Raw,
    double? Value,
    string? Unit,
    double? Least,
    double? Most,
    Verdict Verdict,
    string? Of,
    DateTimeOffset At)
{
    /// <summary>Its number in the order of keeping, from 1; 0 while it is not kept.</summary>
    public long Number { get; init; }
}

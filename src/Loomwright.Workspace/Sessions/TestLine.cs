using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Records;

namespace Loomwright.Sessions;

/// <summary>One expectation with the answer it got.</summary>
/// <param name="Stage">The stage it belongs to.</param>
/// <param name="Step">The step it belongs to.</param>
/// <param name="Expected">What was computed.</param>
/// <param name="Answer">What was read, or how the step as a whole was seen.</param>
public sealed record TestLine(Stage Stage, Step Step, Expectation Expected, Entry Answer)
{
    /// <summary>What made it count no longer; null while it counts.</summary>
    public Entry? VoidSince { get; init; }

    /// <summary>What was given here and was not as expected, before the answer that counts; in the order of giving.</summary>
    public ImmutableArray<Entry> Earlier { get; init; } = [];

    /// <summary>Where the tips were, and how everything stood when it was seen or read.</summary>
    public string With => AsItStood.Of(Stage, Step);

    /// <summary>The answer in words: what was typed and how it stands to the band, or what was pressed; then what it stands in place of.</summary>
    public string Words => Earlier.IsEmpty ? Said : $"{Said} (before that: {string.Join("; ", Earlier.Select(e => e.Unit is null ? e.Raw : $"{e.Raw}, outside"))})";

    private string Said => Answer.Kind == EntryKind.Seen ? (Expected.Band is null ? Answer.Raw : $"not read; the step: {Answer.Raw}") : Answer.Verdict switch
    {
        _ when Answer.Unit is null => Answer.Raw,
        Verdict.AsExpected => $"{Answer.Raw}, inside",
        Verdict.Not => $"{Answer.Raw}, outside",
        _ => Answer.Raw,
    };
}

using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Records;
using Loomwright.Sessions;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What <c>record</c> answers: what people said they saw and read, held against what was computed then.</summary>
public sealed class RecordAnswer(OpenedDesign design, ImmutableArray<TestRecord> records, ImmutableArray<SearchRecord> searches) : Answer("record", design)
{
    [Description("The newest session along each plan, the bench first; empty when nothing was checked yet.")]
    public ImmutableArray<SessionAnswer> Sessions { get; } = [.. records.Select(r => SessionAnswer.Of(r, design.Stored.Sha256))];

    [Description("Searches for a cause in which something was told, the newest first.")]
    public ImmutableArray<SearchAnswer> Searches { get; } = [.. searches.Select(s => SearchAnswer.Of(s, design.Stored.Sha256))];
}

/// <summary>A search for a cause.</summary>
public sealed record SearchAnswer(
    DateTimeOffset Began,
    [property: Description("The step of a session it began at; null for one that began with a symptom.")] string? Step,
    [property: Description("SHA-256 of the design as it then stood.")] string DesignSha256,
    [property: Description("Whether the file is another one now.")] bool FileChangedSince,
    [property: Description("Every answer that was not taken back, in the order given.")] ImmutableArray<ToldAnswer> Told)
{
    public static SearchAnswer Of(SearchRecord record, string? now) => new(
        record.Search.Began, record.Step, record.Search.Design, record.Search.Design != now,
        [.. record.Answers.Select(a => new ToldAnswer(SearchRecord.Says(a), a.Value, a.Least, a.Most, a.At))]);
}

/// <summary>One answer in a search for a cause.</summary>
public sealed record ToldAnswer(
    [property: Description("What was done, asked and told, in words.")] string Says,
    [property: Description("Volts read; null when none were.")] double? Volts,
    [property: Description("Lower end of where they are when nothing is wrong; null where that is not known.")] double? Least,
    [property: Description("Upper end.")] double? Most,
    DateTimeOffset At);

/// <summary>A stretch of work along one plan.</summary>
public sealed record SessionAnswer(
    [property: Description("bench, or bike for the finished loom on the bike.")] string Plan,
    DateTimeOffset Began,
    [property: Description("Who did it; empty when not said.")] string Who,
    [property: Description("With which meter; empty when not said.")] string Meter,
    [property: Description("SHA-256 of the design as it then stood.")] string DesignSha256,
    [property: Description("SHA-256 of the plan's steps as they were when it began; null in a session from before they were kept.")] string? StepsSha256,
    [property: Description("Whether the file is another one now.")] bool FileChangedSince,
    [property: Description("Text id of a fault put in on purpose, or null.")] string? Fault,
    [property: Description("Everything of the plan that was answered, in its order; the last answer counts.")] ImmutableArray<CheckedAnswer> Checked,
    [property: Description("What was read at steps that were not answered; they stand under not_checked too.")] ImmutableArray<CheckedAnswer> ReadAlone,
    [property: Description("What was answered before something in its stage got hot or was changed; it counts no longer.")] ImmutableArray<VoidAnswer> Void,
    [property: Description("Hot, smoke or smell; repairs and changes; built as the file says.")] ImmutableArray<HappenedAnswer> Happened,
    [property: Description("Every step of the plan that expects something and was not answered.")] ImmutableArray<NotCheckedAnswer> NotChecked)
{
    public static SessionAnswer Of(TestRecord record, string? now) => new(
        record.Session.Plan,
        record.Session.Began,
        record.Session.Who,
        record.Session.Meter,
        record.Session.Design,
        record.Session.Steps,
        record.Session.Design != now,
        record.Session.Fault,
        [.. record.Lines.Select(CheckedAnswer.Of)],
        [.. record.ReadAlone.Select(CheckedAnswer.Of)],
        [.. record.Void.Select(v => new VoidAnswer(CheckedAnswer.Of(v), record.Says(v.VoidSince!)))],
        [.. record.Happened.Select(h => new HappenedAnswer(h.Step, h.Kind, record.Says(h), h.At))],
        [.. record.NotChecked.Select(s => new NotCheckedAnswer(s.Id, s.Text))]);
}

/// <summary>One expectation with the answer it got.</summary>
public sealed record CheckedAnswer(
    int Stage,
    string Step,
    [property: Description("The lamp, light or fuse, or what the meter was on.")] string What,
    [property: Description("How everything stood then: tips, power, fuses out, plugs off, controls not at rest.")] string With,
    [property: Description("What was computed, in words.")] string Expected,
    [property: Description("Lower end of the band in the unit; null for none.")] double? Least,
    [property: Description("Upper end of the band.")] double? Most,
    [property: Description("What was typed or pressed.")] string Answer,
    [property: Description("The number read, in the unit; null when none was.")] double? Value,
    [property: Description("Volt, Amp or Ohm; null when it was not read with a meter.")] string? Unit,
    [property: Description("How it stands to what was computed.")] Verdict Verdict,
    DateTimeOffset At)
{
    public static CheckedAnswer Of(TestLine line) => new(
        line.Stage.Number, line.Step.Id, line.Expected.What, line.With, line.Expected.Shows, line.Expected.Band?.Least, line.Expected.Band?.Most,
        line.Words, line.Answer.Value, line.Answer.Unit, line.Answer.Verdict, line.Answer.At);
}

/// <summary>An answer that counts no longer.</summary>
public sealed record VoidAnswer(CheckedAnswer Was, [property: Description("What made it void, in words.")] string Since);

/// <summary>Something that happened beside the checks.</summary>
public sealed record HappenedAnswer(string Step, EntryKind Kind, [property: Description("The same in words.")] string Says, DateTimeOffset At);

/// <summary>A step nobody answered.</summary>
public sealed record NotCheckedAnswer(string Step, [property: Description("What it asks for.")] string Text);

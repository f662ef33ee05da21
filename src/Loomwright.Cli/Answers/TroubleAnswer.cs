using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Diagnosis;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What <c>trouble</c> answers.</summary>
public sealed class TroubleAnswer(OpenedDesign design) : Answer("trouble", design)
{
    [Description("Where the search stands.")]
    public Search State { get; init; }

    [Description("False when the answers go with nothing in the list.")]
    public bool Fits { get; init; }

    [Description("How likely it is something that is not in the list, 0 to 1.")]
    public double SomethingElse { get; init; }

    [Description("The answer that goes worst with the others and should be asked again; null while all go together.")]
    public string? Misfit { get; init; }

    [Description("What may be wrong, the likeliest first: three, and all above one in a hundred.")]
    public ImmutableArray<CauseAnswer> Causes { get; init; } = [];

    [Description("Repairs that nothing left to ask tells apart.")]
    public ImmutableArray<string> Group { get; init; } = [];

    [Description("What to do next; null when there is nothing left to ask.")]
    public NextQuestion? Next { get; init; }

    public static TroubleAnswer Of(OpenedDesign design, TroubleTable table, Trouble trouble) => new(design)
    {
        State = trouble.State,
        Fits = trouble.Odd is null,
        SomethingElse = trouble.SomethingElse,
        Misfit = trouble.Odd is { } odd ? TroubleText.Of(table, odd) : null,
        Causes =
        [
            .. trouble.Suspects.Select(s => new CauseAnswer(
                s.Repair, s.Share, s.InWords, [.. s.Hypotheses.SelectMany(h => h.Faults).Select(f => f.Fault.ToString()).Distinct()], Why.Of(table, trouble.Answers, s.Hypotheses[0]))),
        ],
        Group = [.. trouble.Group.Select(s => s.Repair)],
        Next = trouble.Questions is [var question, ..] && trouble.Odd is null
            ? new NextQuestion(TroubleText.Do(table, question.Place), TroubleText.Ask(table, question), [.. trouble.Outlooks(question).Select(o => new OutlookAnswer(o.Answer, o.Chance, o.Repairs))], question.Minutes, question.Place.Check?.Name)
            : null,
    };
}

/// <summary>Something that may be wrong.</summary>
public sealed record CauseAnswer(
    [property: Description("What sets it right.")] string Repair,
    [property: Description("How likely, 0 to 1.")] double Probability,
    [property: Description("The same in words.")] string InWords,
    [property: Description("Ids of the faults this repair sets right, the likeliest first; empty when nothing is wrong.")] ImmutableArray<string> Faults,
    [property: Description("Why, in sentences.")] ImmutableArray<string> Why);

/// <summary>Something to do and look at, or to measure.</summary>
public sealed record NextQuestion(
    [property: Description("What to operate.")] string Do,
    [property: Description("What to look at or measure then.")] string Ask,
    [property: Description("What it may show and what that would speak for, the likeliest first.")] ImmutableArray<OutlookAnswer> Answers,
    [property: Description("About how long it takes.")] double Minutes,
    [property: Description("The name of the check when a thing itself is looked at, as --found takes it; else null.")] string? Check);

/// <summary>One answer a question may get.</summary>
public sealed record OutlookAnswer(
    string Answer,
    [property: Description("How likely that answer is, 0 to 1.")] double Chance,
    [property: Description("What it would speak for, the likeliest first.")] ImmutableArray<string> Repairs);

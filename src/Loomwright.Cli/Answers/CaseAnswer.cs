using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Cases;
using Loomwright.Diagnosis;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What <c>trouble --case</c> answers.</summary>
public sealed class CaseAnswer(OpenedDesign design) : Answer("trouble-case", design)
{
    [Description("Title of the account.")]
    public string Account { get; init; } = "";

    [Description("C: cause found and the repair worked. R: a maker's recall. H: a rule told by the trade.")]
    public string Grade { get; init; } = "";

    [Description("Text ids of the faults that were there together.")]
    public ImmutableArray<string> Cause { get; init; } = [];

    [Description("Repairs that count as naming the cause, as the account tells them.")]
    public ImmutableArray<string> Accept { get; init; } = [];

    [Description("Place of the cause by what was told alone, from 1; of several stages the worst. Null when it is not listed.")]
    public int? RankTold { get; init; }

    [Description("The same after the search's own questions.")]
    public int? RankAsked { get; init; }

    [Description("One, and one more for each repair the account tells of before it goes on.")]
    public ImmutableArray<CaseStageAnswer> Stages { get; init; } = [];

    public static CaseAnswer Of(OpenedDesign design, CaseSearch search) => new(design)
    {
        Account = search.Account,
        Grade = search.Grade,
        Cause = search.Cause,
        Accept = search.Accept,
        RankTold = search.ToldRank,
        RankAsked = search.AskedRank,
        Stages = [.. search.Stages.Select(Stage)],
    };

    private static CaseStageAnswer Stage(CaseStage stage) => new(
        stage.Accepted, stage.ToldRank, Causes(stage.Told), stage.Steps.Length, stage.Steps.Sum(s => s.Question.Minutes),
        [.. stage.Steps.Select(s => new CaseStepAnswer(TroubleText.Do(stage.Asked.Table, s.Question.Place), TroubleText.Ask(stage.Asked.Table, s.Question), TroubleText.Of(stage.Asked.Table, s.Answer)))],
        stage.Asked.State, stage.AskedRank, Causes(stage.Asked));

    private static ImmutableArray<CaseCauseAnswer> Causes(Trouble trouble) => [.. trouble.Suspects.Select(s => new CaseCauseAnswer(s.Repair, s.Share))];
}

/// <summary>One stage of a case.</summary>
public sealed record CaseStageAnswer(
    [property: Description("The repairs that name the cause, as the catalogue words them.")] ImmutableArray<string> Accepted,
    [property: Description("Place of the first of them by what was told alone, from 1; null when it is not listed.")] int? RankTold,
    [property: Description("What may be wrong by what was told alone, the likeliest first.")] ImmutableArray<CaseCauseAnswer> Told,
    int Questions,
    [property: Description("What the questions cost, in minutes.")] double Minutes,
    [property: Description("The search's own questions and what the simulated circuit answered.")] ImmutableArray<CaseStepAnswer> Steps,
    [property: Description("Where the search stood at the end.")] Search State,
    [property: Description("Place of the first of them at the end.")] int? RankAsked,
    [property: Description("What may be wrong at the end, the likeliest first.")] ImmutableArray<CaseCauseAnswer> Asked);

/// <summary>Something that may be wrong.</summary>
public sealed record CaseCauseAnswer(string Repair, [property: Description("How likely, 0 to 1.")] double Probability);

/// <summary>A question and its answer.</summary>
public sealed record CaseStepAnswer(string Do, string Ask, string Answer);

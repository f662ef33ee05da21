using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Findings;
using Loomwright.Fixes;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What <c>check</c> answers.</summary>
public sealed class CheckAnswer(OpenedDesign design, ImmutableArray<Finding> findings, TriedFix? fixedBefore = null) : Answer("check", design)
{
    [Description("The fix that --fix has just written; null without --fix. Everything else is of the file after it.")]
    public FixedAnswer? Fixed { get; } = fixedBefore is null ? null : new(fixedBefore.Fix.Id, fixedBefore.Fix.Title, [.. fixedBefore.Lines.Select(l => new LineChangeAnswer(l.Line, l.Before, l.After))]);

    [Description("Severest first; in file order within a severity.")]
    public ImmutableArray<FindingAnswer> Findings { get; } = [.. findings.Select(f => FindingAnswer.Of(f, design))];
}

/// <summary>A fix that was written, with the lines it changed.</summary>
public sealed record FixedAnswer(string Id, string Title, ImmutableArray<LineChangeAnswer> Changes);

/// <summary>Lines before and after; the line counts from 1 in the file before.</summary>
public sealed record LineChangeAnswer(int Line, ImmutableArray<string> Before, ImmutableArray<string> After);

/// <summary>One finding.</summary>
public sealed record FindingAnswer(
    [property: Description("Slug; explain tells more.")] string Code,
    [property: Description("stop: harm, or no answer possible. look: likely wrong. note: common practice worth knowing.")] Severity Severity,
    WhereAnswer Where,
    string What,
    string Why,
    string Do,
    ImmutableArray<EvidenceAnswer> Evidence,
    [property: Description("Changes of the file that cure it: check --fix ID writes one.")] ImmutableArray<FixAnswer> Fixes)
{
    public static FindingAnswer Of(Finding finding, OpenedDesign design) => new(
        finding.Code,
        finding.Severity,
        WhereAnswer.Of(finding.Where, design),
        finding.What,
        finding.Why,
        finding.Do,
        [.. finding.Evidence.Select(e => new EvidenceAnswer(e.Name, e.Value))],
        [.. design.Bike.Fixes.Where(f => f.For == finding).Select(f => new FixAnswer(f.Id, f.Title))]);
}

/// <summary>A change of the file that is offered.</summary>
public sealed record FixAnswer(string Id, string Title);

/// <summary>One fact a finding rests on, with its unit.</summary>
public sealed record EvidenceAnswer(string Name, string Value);

/// <summary>What a finding is about and where that stands in the file; lines and columns count from 1, the end is just past the last character.</summary>
public sealed record WhereAnswer(
    [property: Description("file, stretch, condition, part, terminal, wire or function.")] string Kind,
    [property: Description("Its name, or null for the file or a stretch of it.")] string? Subject,
    int Line,
    int Column,
    int EndLine,
    int EndColumn)
{
    public static WhereAnswer Of(Findings.Subject subject, OpenedDesign design)
    {
        var (start, end) = design.Place(subject);
        var (kind, name) = subject switch
        {
            Findings.Subject.OfPart s => ("part", s.Part),
            Findings.Subject.OfTerminal s => ("terminal", s.Terminal.ToString()),
            Findings.Subject.OfWire s => ("wire", s.Wire),
            Findings.Subject.OfCondition s => ("condition", s.Key),
            Findings.Subject.OfFunction s => ("function", s.Function),
            Findings.Subject.Stretch => ("stretch", null),
            _ => ("file", (string?)null),
        };
        return new(kind, name, start.Line, start.Column, end.Line, end.Column);
    }
}

using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Collects what is found while a file is read. Stops counting at a thousand, so that a hostile file cannot fill the memory.</summary>
internal sealed class Found
{
    private const int Most = 1000;

    private readonly List<Finding> _findings = [];

    private int _ofWriting;

    public int Count => _findings.Count;

    /// <summary>From here on findings are about the meaning; those before were about the writing.</summary>
    public void WritingIsRead() => _ofWriting = _findings.Count;

    /// <summary>Whether part of what was written inside the stretch could not be read, so that something may only seem to be missing.</summary>
    public bool IsBrokenWithin(Span span) => _findings.Take(_ofWriting).Any(f => IsIn(f, span));

    public void Stop(string code, Span at, string what, string why, string cure, params ReadOnlySpan<Evidence> evidence) =>
        Add(Severity.Stop, code, at, what, why, cure, evidence);

    public void Look(string code, Span at, string what, string why, string cure, params ReadOnlySpan<Evidence> evidence) =>
        Add(Severity.Look, code, at, what, why, cure, evidence);

    public void Note(string code, Span at, string what, string why, string cure, params ReadOnlySpan<Evidence> evidence) =>
        Add(Severity.Note, code, at, what, why, cure, evidence);

    /// <summary>Takes over what another collected.</summary>
    public void Take(Found other) => _findings.AddRange(other._findings.Take(Most - _findings.Count));

    /// <summary>Whether something inside the stretch already stops the reading.</summary>
    public bool StopsWithin(Span span) => _findings.Any(f => f.Severity == Severity.Stop && IsIn(f, span));

    /// <summary>Everything, in the order of the file.</summary>
    public ImmutableArray<Finding> InFileOrder() => [.. _findings.OrderBy(f => f.Where is Subject.Stretch s ? s.Span.Start : 0)];

    private static bool IsIn(Finding finding, Span span) => finding.Where is Subject.Stretch s && s.Span.Start >= span.Start && s.Span.Start <= span.End;

    private void Add(Severity severity, string code, Span at, string what, string why, string cure, ReadOnlySpan<Evidence> evidence)
    {
        if (_findings.Count < Most)
        {
            var said = what + why + cure;
            _findings.Add(new Finding(code, severity, new Subject.Stretch(at), what, why, cure, [.. evidence.ToArray().Where(e => said.Contains("{" + e.Name + "}", StringComparison.Ordinal))]));
        }
    }
}

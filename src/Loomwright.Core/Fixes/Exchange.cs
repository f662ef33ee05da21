using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.ProjectFile;

namespace Loomwright.Fixes;

/// <summary>A part drawn the wrong way round: its two ends' wires are exchanged.</summary>
internal static class Exchange
{
    public static IEnumerable<Cure> Of(Pen pen, Finding finding)
    {
        if (finding.Where is not Subject.OfPart { Part: var name } || pen.Study.Paths.Models.GetValueOrDefault(name)?.Polarity is not { } poles)
        {
            yield break;
        }

        var (plus, minus) = (new TerminalRef(name, poles.Plus), new TerminalRef(name, poles.Minus));
        var (onPlus, onMinus) = (pen.On(plus), pen.On(minus));
        if (!onPlus.IsEmpty && !onMinus.IsEmpty && !onPlus.Intersect(onMinus).Any())
        {
            IEnumerable<Edit> edits = [.. onPlus.Select(w => pen.End(w, plus, minus)), .. onMinus.Select(w => pen.End(w, minus, plus))];
            yield return new Cure("exchange", name, $"Exchange the wires on {plus} and {minus}", [.. edits]);
        }
    }
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;

namespace Loomwright.Checks;

/// <summary>The data lead of a button block on a terminal that the load controller does not set aside for it.</summary>
internal static class DataLeadOnAnotherInput
{
    public static Rule Rule { get; } = new(
        "data-lead-on-another-input",
        Severity.Look,
        Severity.Look,
        "A button block's data lead on a terminal that is not set aside for it.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. from block in study.Paths.Built
           where block.Part.Kind == "button block"
           from lead in block.Model.Terminals.Where(t => t.Role == Role.Output).Select((t, i) => (At: new TerminalRef(block.Part.Name, t.Mark), IsSecond: i > 0))
           let found = Found(study.Paths, lead.At, lead.IsSecond)
           where found is not null
           select found,
    ];

    private static Finding? Found(Paths paths, TerminalRef lead, bool isSecond)
    {
        var landed = paths.Joined(lead, t => t.Via is Via.Wire or Via.Joint).Where(t => paths.Models.GetValueOrDefault(t.Part)?.Controller is not null).ToList();
        if (landed.Count == 0 || landed.Exists(t => t.Equals(Wanted(paths, t.Part, isSecond))))
        {
            return null;
        }

        var at = landed.MinBy(t => paths.Terminal(t)?.Role == Role.Input ? 0 : 1);
        return new Finding(
            Rule.Code,
            Severity.Look,
            new Subject.OfTerminal(at),
            "The data lead {lead} lands on {terminal}; {box} listens for it at {wanted}.",
            "What a block says over its data lead is understood only where the box listens for it. On any other terminal no button of the block does anything, and that terminal may go on and off without sense.",
            "Move the lead to {wanted}. If the box hears its block at {terminal} after all, look it up in the manual and say so under data.",
            [
                Evidence.Of("lead", Called.At(paths, lead)),
                Evidence.Of("terminal", Called.At(paths, at)),
                Evidence.Of("box", at.Part),
                Evidence.Of("wanted", Wanted(paths, at.Part, isSecond) is { } wanted ? Called.At(paths, wanted) : "no terminal: its file entry has no data"),
            ]);
    }

    private static TerminalRef? Wanted(Paths paths, string box, bool isSecond) =>
        paths.Models[box].Controller!.Data is { } data && (isSecond ? data.Second : data.Terminal) is { } mark ? new TerminalRef(box, mark) : null;
}

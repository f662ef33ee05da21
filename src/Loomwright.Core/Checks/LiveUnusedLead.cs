using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A lead that goes nowhere and can be live.</summary>
internal static class LiveUnusedLead
{
    public static Rule Rule { get; } = new(
        "live-unused-lead",
        Severity.Look,
        Severity.Look,
        "A lead of a switch, or a wire to a joint, that leads nowhere and can be live.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        return paths.Source is null ? [] : [.. Leads(paths).Concat(Ends(paths))];
    }

    // Leads of a switch with no wire on them, in a position that joins them to something live. One that is named unused is capped.
    private static IEnumerable<Finding> Leads(Paths paths) =>
        from part in paths.Built
        where part.Part.Kind == "switch" && paths.IsWired(part.Part)
        from terminal in part.Model.Terminals
        let at = new TerminalRef(part.Part.Name, terminal.Mark)
        where !paths.At(at).Any(t => t.Via == Via.Wire) && !part.Part.Settings.Words("unused").Contains(terminal.Mark, Names.Comparer)
        let position = part.Model.Controls.SelectMany(c => c.Positions).FirstOrDefault(p => IsLive(paths, part.Part, at, p))
        where position is not null
        select new Finding(
            Rule.Code,
            Severity.Look,
            new Subject.OfTerminal(at),
            "No wire is on {lead}, and with {switch} at {position} it can be live.",
            "A bare live end behind a headlamp or under a tank touches something sooner or later.",
            "If it is spare, cap it and name it under unused. If not, the wire that belongs there is not drawn yet.",
            [Evidence.Of("lead", Called.At(paths, at)), Evidence.Of("switch", part.Part.Name), Evidence.Of("position", position)]);

    private static bool IsLive(Paths paths, Part part, TerminalRef at, string position) => paths.Joined(at, t => t.Carries
        && !(t.Part == part && t.Element?.Gate is Gate.ByControl gate && !gate.ClosedIn.Contains(position, Names.Comparer))).Contains(paths.Feed);

    // A joint with one wire on it.
    private static IEnumerable<Finding> Ends(Paths paths)
    {
        var live = paths.Joined(paths.Feed, t => t.Carries);
        return from part in paths.Loom.Parts
               where part.Kind == "splice" && paths.At(new TerminalRef(part.Name, "")) is [{ Wire: not null }] && live.Contains(new TerminalRef(part.Name, ""))
               let wire = paths.At(new TerminalRef(part.Name, ""))[0].Wire!
               select new Finding(
                   Rule.Code,
                   Severity.Look,
                   new Subject.OfWire(wire.Name),
                   "{wire} can be live and ends at {splice}, where nothing goes on.",
                   "A bare live end touches something sooner or later.",
                   "If it is there for later, cap it and leave it out of the file until then. If not, the wire that goes on from there is not drawn yet.",
                   [Evidence.Of("wire", wire.Name), Evidence.Of("splice", part.Name)]);
    }
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A wire from battery plus with no fuse between.</summary>
internal static class UnfusedFeed
{
    // A hand's breadth with slack in the wire (common practice, no source).
    private const double HandMetres = 0.3;

    public static Rule Rule { get; } = new(
        "unfused-feed",
        Severity.Note,
        Severity.Stop,
        "A wire from battery plus that no fuse protects.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        if (paths.Source is null || paths.Models[paths.Source.Name].Supply!.LimitAmps is not null)
        {
            return [];
        }

        var bare = paths.Joined(paths.Feed, l => l.Via is Via.Wire or Via.Joint);
        return
        [
            .. study.Loom.Wires
                .Where(w => bare.Contains(w.From))
                .Select(w => (Wire: w, End: FarEnd(paths, w)))
                .Select(x => IsFuse(paths, x.End) ? LongLead(paths, x.Wire, x.End) : IsPoint(paths, x.End) || IsRegulator(paths, x.End) ? null : IsStarter(paths, x.End) ? StarterCable(paths, x.Wire, x.End) : Unprotected(paths, x.Wire, x.End))
                .OfType<Finding>(),
        ];
    }

    // The end the battery reaches last.
    private static TerminalRef FarEnd(Paths paths, Wire wire)
    {
        bool Bare(Tie l) => l.Via is Via.Wire or Via.Joint && l.Wire != wire;
        return paths.Way(paths.Feed, t => t.Equals(wire.From), Bare) is null ? wire.From : wire.To;
    }

    private static bool IsFuse(Paths paths, TerminalRef at) => paths.At(at).Any(l => l.Via == Via.Fuse);

    private static bool IsPoint(Paths paths, TerminalRef at) => at.Terminal.Length == 0 || paths.Loom.Part(at.Part)?.Kind == "connector" || paths.At(at).All(l => l.Via == Via.Wire);

    // What takes a hundred amps has no fuse by custom: its cable is short, booted and clear of edges instead.
    private static bool IsStarter(Paths paths, TerminalRef at) =>
        paths.Loom.Part(at.Part)?.Kind == "starter" || (paths.Loom.Part(at.Part)?.Kind is "starter relay" or "solenoid" && paths.At(at).Any(t => t.Via == Via.Relay));

    // A rule of its own tells of the charging lead.
    private static bool IsRegulator(Paths paths, TerminalRef at) => !paths.Models[at.Part].Charging.IsEmpty;

    private static Finding StarterCable(Paths paths, Wire wire, TerminalRef end) => new(
        Rule.Code,
        Severity.Note,
        new Subject.OfWire(wire.Name),
        "No fuse lies between {feed} and {end}, as is the custom with a starter's cable: {wire}.",
        "No fuse carries a starter and still protects its cable. Rubbed through it gives all the battery can. Its size is {size}, its length {length}.",
        "Keep it short, put a boot over both ends and lead it clear of edges. Connect it last.",
        Facts(paths, wire, end));

    private static Finding Unprotected(Paths paths, Wire wire, TerminalRef end) => new(
        Rule.Code,
        Severity.Stop,
        new Subject.OfWire(wire.Name),
        "From {feed} to {end} there is no fuse; nothing protects {wire}.",
        "Rubbed through on the frame it carries all the battery can give, until it burns. Its size is {size}, its length {length}.",
        "Put a small fuse of its own at the battery end, within a hand of {feed}. Or take the feed from behind a fuse that is there already, if the wire stands that fuse.",
        Facts(paths, wire, end));

    private static Finding? LongLead(Paths paths, Wire wire, TerminalRef fuse)
    {
        var way = paths.Way(paths.Feed, t => t.Equals(fuse), l => l.Via is Via.Wire or Via.Joint);
        var metres = way?.Sum(l => l.Wire?.Length.Metres ?? 0) ?? 0;
        return metres <= HandMetres
            ? null
            : new Finding(
                Rule.Code,
                Severity.Note,
                new Subject.OfWire(wire.Name),
                "The fuse at {end} sits {run} of wire away from {feed}; nothing protects that stretch.",
                "By custom a fuse sits within a hand of battery plus, about {custom}: the shorter the stretch before it, the less there is to rub through.",
                "Move the fuse nearer to {feed}. Where it cannot move, give the stretch a second sleeve and keep it clear of edges.",
                [.. Facts(paths, wire, fuse), Evidence.Of("run", new Length(metres)), Evidence.Of("custom", new Length(HandMetres))]);
    }

    private static ImmutableArray<Evidence> Facts(Paths paths, Wire wire, TerminalRef end) =>
    [
        Evidence.Of("wire", wire.Name),
        Evidence.Of("feed", Called.At(paths, paths.Feed)),
        Evidence.Of("end", Called.At(paths, end)),
        Evidence.Of("size", wire.Size),
        Evidence.Of("length", wire.Length),
    ];
}

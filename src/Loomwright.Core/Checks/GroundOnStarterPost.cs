using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A ground wire on a post of the starter relay: a short through the thickest cable of the bike.</summary>
internal static class GroundOnStarterPost
{
    public static Rule Rule { get; } = new(
        "ground-on-starter-post",
        Severity.Stop,
        Severity.Stop,
        "A ground wire on the motor post or the battery post of a starter relay.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        return paths.Source is null ? [] :
        [
            .. from contact in paths.Ties
               where contact.Via == Via.Relay && contact.Part!.Kind is "starter relay" or "solenoid"
               from post in new[] { contact.A, contact.B }
               let way = paths.Way(post, t => t.Equals(paths.Return), t => t.Via is Via.Wire or Via.Joint)
               where way is not null
               select Found(paths, post, contact.Part!.Name, way.Value),
        ];
    }

    private static Finding Found(Paths paths, TerminalRef post, string relay, ImmutableArray<Tie> way)
    {
        var isLive = paths.Joined(paths.Feed, t => t.IsFixed).Contains(post);
        return new Finding(
            Rule.Code,
            Severity.Stop,
            new Subject.OfTerminal(post),
            isLive ? "{post}, which is live, is joined to ground: {wires}." : "{post}, the motor's post, is joined to ground: {wires}.",
            isLive
                ? "The battery is shorted through cables that nothing protects: they glow as soon as the battery is connected."
                : "The moment {relay} closes, the battery is shorted through cables that nothing protects: a click, no turning, smoke.",
            "Take the ground off this post. It belongs on the engine or on battery minus; only the starter's cable belongs here.",
            [
                Evidence.Of("wires", string.Join(", ", way.Select(t => t.Wire?.Name).OfType<string>().DefaultIfEmpty("what it sits on"))),
                Evidence.Of("post", Called.At(paths, post)),
                Evidence.Of("relay", relay),
            ]);
    }
}

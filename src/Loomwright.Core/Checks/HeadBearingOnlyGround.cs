using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>Loads whose current comes back only through the bearings of the steering.</summary>
internal static class HeadBearingOnlyGround
{
    public static Rule Rule { get; } = new(
        "head-bearing-only-ground",
        Severity.Look,
        Severity.Look,
        "A ground that reaches the frame only through the head bearing.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        if (paths.Source is null)
        {
            return [];
        }

        var bearings = study.Loom.Parts.Where(p => p.Kind == "ground body" && Names.Same(p.Settings.Word("through") ?? "", "head bearing") && p.Settings.Word("joined to") is not null)
            .Select(p => (Body: p.Name, Other: p.Settings.Word("joined to")!)).ToList();
        bool IsBearing(Tie tie) => tie is { Via: Via.Joint, Part: null } && bearings.Exists(b => tie.A.Equals(new(b.Body, "")) && tie.B.Equals(new(b.Other, "")));
        var all = paths.Joined(paths.Return, t => t.Via is Via.Wire or Via.Joint);
        var firm = paths.Joined(paths.Return, t => t.Via is Via.Wire or Via.Joint && !IsBearing(t));
        return
        [
            .. from bearing in bearings
               let body = new TerminalRef(bearing.Body, "")
               where all.Contains(body) && !firm.Contains(body)
               let hang = paths.Joined(body, t => t.Via is Via.Wire or Via.Joint && !IsBearing(t))
               let loads = Grounded(paths, hang)
               where loads.Count > 0
               select Found(body, bearing.Other, loads),
        ];
    }

    private static List<string> Grounded(Paths paths, HashSet<TerminalRef> ground) =>
    [
        .. paths.Ties.Where(t => t.Via is Via.Load or Via.Contact && t.Part is not null && (ground.Contains(t.A) || ground.Contains(t.B))).Select(t => t.Part!.Name).Distinct(StringComparer.Ordinal),
    ];

    private static Finding Found(TerminalRef body, string other, List<string> loads) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfPart(body.Part),
        "From {body} the current of {loads} reaches {other} only through the head bearing.",
        "Grease and rollers are no contact: the resistance changes as you steer, lamps flicker or go dim together, and sparks pit the bearing.",
        "Draw a wire across the steering, from {body} to {other} or to the ground bar, with slack for full lock.",
        [
            Evidence.Of("body", body.Part),
            Evidence.Of("other", other),
            Evidence.Of("loads", string.Join(", ", loads)),
        ]);
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A switch with one contact that is asked to feed one thing in one position and another in the other.</summary>
internal static class ChangeoverWanted
{
    public static Rule Rule { get; } = new(
        "changeover-wanted",
        Severity.Look,
        Severity.Look,
        "A switch with one contact where two things are promised in turn.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var poses = study.Poses;
        return poses.Paths.Source is null ? [] :
        [
            .. poses.Wiring.Controls
                .Where(c => !c.Momentary && c.Positions.Length == 2)
                .Select(c => (Control: c, Contacts: poses.Paths.Ties.Where(t => Follows(t, c.Name)).ToList()))
                .Where(x => x.Contacts.Count == 1)
                .Select(x => Of(poses, poses.Control(x.Control.Name), x.Contacts[0]))
                .OfType<Finding>(),
        ];
    }

    private static bool Follows(Tie tie, string control) => tie.Element?.Gate is Parts.Gate.ByControl gate && Names.Same(gate.Control, control);

    // One function with the contact closed works; one with it open has something dark that nothing but this contact could feed.
    private static Finding? Of(Poses poses, int control, Tie contact)
    {
        var name = poses.Wiring.Controls[control].Name;
        var own = poses.Functions.Where(f => f.Function.Works.NamesUsed().Contains(name, Names.Comparer)).ToList();
        var without = poses.Paths.Joined(poses.Paths.Feed, t => t.Carries && t != contact);
        var open = own.Where(f => !IsClosed(poses, contact, f.Pose, control))
            .Select(f => (f.Function, f.Pose, Dark: Dark(poses, f.Function, f.Pose).FirstOrDefault(s => !Reaches(poses, without, s), -1)))
            .FirstOrDefault(f => f.Dark >= 0);
        var closed = own.FirstOrDefault(f => IsClosed(poses, contact, f.Pose, control) && !Dark(poses, f.Function, f.Pose).Any());
        return open.Function is null || closed.Function is null
            ? null
            : new Finding(
                Rule.Code,
                Severity.Look,
                new Subject.OfPart(contact.Part!.Name),
                "{switch} has one contact, {contact}; at {position} it joins nothing, so {dark} stays dark although {function} is promised there.",
                "A switch with two leads feeds one thing or nothing. For two in turn, as dip and main, it takes a changeover switch with three leads, or a changeover relay.",
                "Take a switch with three leads: one feed, two ways on. Or let this one move the coil of a changeover relay, whose resting contact feeds {dark}.",
                [
                    Evidence.Of("switch", name),
                    Evidence.Of("contact", $"{contact.A} to {contact.B}"),
                    Evidence.Of("position", poses.Wiring.Controls[control].Positions[open.Pose.Positions[control]]),
                    Evidence.Of("dark", Words.Name(poses.Wiring.Sights[open.Dark].Name)),
                    Evidence.Of("function", open.Function.Name),
                    Evidence.Of("other", closed.Function.Name),
                ]);
    }

    private static bool IsClosed(Poses poses, Tie contact, Pose pose, int control) =>
        contact.IsClosed(new Dictionary<string, string>(Names.Comparer) { [poses.Wiring.Controls[control].Name] = poses.Wiring.Controls[control].Positions[pose.Positions[control]] });

    private static IEnumerable<int> Dark(Poses poses, Function function, Pose pose) =>
        from s in Enumerable.Range(0, pose.Seen.Length)
        let sight = poses.Wiring.Sights[s]
        where !Poses.IsOn(pose.Seen[s].Symbol)
        where function.Shows.Any(show => show.Symbol is not ("dark" or "silent" or "rests") && (Names.Same(show.What, sight.Name) || Names.Same(show.What, sight.Part)))
        select s;

    private static bool Reaches(Poses poses, HashSet<TerminalRef> fed, int sight)
    {
        var link = poses.Wiring.Links[poses.Wiring.Sights[sight].Link];
        return fed.Any(t => poses.Wiring.NodeOf(t) is { } node && (node == link.From || node == link.To) && node != 0 && !poses.Paths.Joined(poses.Paths.Return, l => l.Carries).Contains(t));
    }
}

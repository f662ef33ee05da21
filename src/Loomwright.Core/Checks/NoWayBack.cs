using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A load whose current cannot return to the supply: a ground left undrawn, a bar without its own lead.</summary>
internal static class NoWayBack
{
    public static Rule Rule { get; } = new(
        "no-way-back",
        Severity.Look,
        Severity.Look,
        "A lamp, horn, box or button whose current has no way back to the supply.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        if (paths.Source is null)
        {
            return [];
        }

        var returned = paths.Joined(paths.Return, l => l.Carries);
        var fed = paths.Joined(paths.Feed, l => l.Carries);
        return
        [
            .. Consumers(paths)
                .Where(c => !returned.Contains(c.A) && !returned.Contains(c.B) && !GoesOnThroughALoad(paths, LostEnd(paths, c, fed), returned))
                .GroupBy(c => Node(paths, LostEnd(paths, c, fed)))
                .Where(g => SensorOnInsulatedEngine.Mounted(paths, g.Key.Part).Count == 0)
                .Select(g => Found(paths, g.Key, [.. g.Select(c => c.Name).Distinct(StringComparer.Ordinal)])),
        ];
    }

    private static IEnumerable<(string Name, TerminalRef A, TerminalRef B)> Consumers(Paths paths)
    {
        foreach (var part in paths.Loom.Parts.Where(paths.IsWired))
        {
            // A rule of its own tells of a button block's ground.
            if (part.Kind == "button block")
            {
                continue;
            }

            var model = paths.Models.GetValueOrDefault(part.Name);
            if (model?.Controller is { } box)
            {
                yield return (part.Name, new TerminalRef(part.Name, box.Supply), new TerminalRef(part.Name, box.Ground));
                foreach (var input in box.Inputs.Where(i => i is { ActiveAtGround: true, Button: null }).Select(i => new TerminalRef(part.Name, i.Terminal)).Where(i => paths.At(i).Any(t => t.Via == Via.Wire)))
                {
                    yield return (Called.At(paths, input), input, input);
                }

                continue;
            }

            foreach (var load in paths.Ties.Where(l => l.Via == Via.Load && l.Part == part && !Signals(paths, l.A) && !Signals(paths, l.B)))
            {
                var several = model!.Sights.Length > 1;
                yield return (several ? $"{part.Name} {load.Element!.Name}" : part.Name, load.A, load.B);
            }
        }
    }

    // Two loads in a row: a gauge and its sender, a winding and the motor, a tell-tale between the two sides.
    private static bool GoesOnThroughALoad(Paths paths, TerminalRef end, HashSet<TerminalRef> returned) =>
        paths.Joined(end, l => l.Carries).Any(at => paths.At(at).Any(l => l.Via == Via.Load && returned.Contains(l.Other(at))));

    // What hangs on a lead that only tells something carries no load.
    private static bool Signals(Paths paths, TerminalRef at) => paths.Terminal(at)?.Role == Role.Output;

    private static TerminalRef LostEnd(Paths paths, (string Name, TerminalRef A, TerminalRef B) load, HashSet<TerminalRef> fed) =>
        (fed.Contains(load.A), fed.Contains(load.B)) switch
        {
            (true, false) => load.B,
            (false, true) => load.A,
            _ => paths.Terminal(load.A)?.Role == Role.Minus ? load.A : load.B,
        };

    // Loads and buttons that meet at one bar or splice lose their way back together; the bar is where to look.
    private static TerminalRef Node(Paths paths, TerminalRef lost)
    {
        var joined = paths.Joined(lost, l => l.Via is Via.Wire or Via.Joint or Via.Contact);
        foreach (var part in paths.Loom.Parts)
        {
            if (paths.Models.GetValueOrDefault(part.Name) is { Terminals: [{ Mark: "" }] } && joined.Contains(new TerminalRef(part.Name, "")))
            {
                return new TerminalRef(part.Name, "");
            }
        }

        return lost;
    }

    private static Finding Found(Paths paths, TerminalRef node, ImmutableArray<string> loads) => new(
        Rule.Code,
        Severity.Look,
        node.Terminal.Length == 0 ? new Subject.OfPart(node.Part) : new Subject.OfTerminal(node),
        "The current of {loads} ends at {node}: from there no wire leads back to {return}.",
        "Without a way back a lamp stays dark, a horn silent, a button without effect. Where several share the lost ground, current can creep through one into the other, and all are dim together.",
        "Look for the lead that is not drawn yet, most likely from {node} to the ground bar or to {return}. If it is on the bike, draw it in the file.",
        [
            Evidence.Of("node", Called.At(paths, node)),
            Evidence.Of("loads", string.Join(", ", loads)),
            Evidence.Of("return", Called.At(paths, paths.Return)),
        ]);
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A box that no position of any control wakes: tried by simulation; the missing feed is then named from the drawing.</summary>
internal static class BoxNeverWakes
{
    // Every combination of six switches of four positions; beyond that the ones with fewest moved are tried.
    private const int MostTries = 4096;

    public static Rule Rule { get; } = new(
        "box-never-wakes",
        Severity.Look,
        Severity.Look,
        "A load controller that no position of any control wakes.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        return paths.Source is null ? [] : [.. paths.Built.Where(b => b.Model.Controller is not null && !Wakes(study, b.Part)).Select(b => Found(paths, b.Part))];
    }

    private static bool Wakes(Study study, Part part)
    {
        var (paths, rig) = (study.Paths, study.Rig);
        var box = paths.Models[part.Name].Controller!;
        var names = box.Awake.NamesUsed().ToHashSet(Names.Comparer);
        TerminalRef[] ends = [new(part.Name, box.Supply), new(part.Name, box.Ground), .. box.Inputs.Where(i => names.Contains(i.Name)).Select(i => new TerminalRef(part.Name, i.Terminal))];
        var blocks = box.Inputs.Any(i => i.Button is not null && names.Contains(i.Name)) ? paths.Built.Where(p => p.Part.Kind == "button block").ToList() : [];
        var controls = ControlsAt(study, [.. ends, .. blocks.SelectMany(b => b.Model.Terminals.Select(t => new TerminalRef(b.Part.Name, t.Mark)))])
            .AddRange(blocks.SelectMany(b => b.Model.Controls));
        return Combinations(controls).Take(MostTries).Any(positions =>
        {
            rig.Reset();
            foreach (var operation in positions)
            {
                rig.Do(operation);
            }

            // One that gives way again and again was awake before.
            return rig.Now.Controllers.Any(c => Names.Same(c.Part, part.Name) && c.Awake) || rig.Now.Events.Any(e => Happening.IsReset(e, part.Name));
        });
    }

    private static ImmutableArray<Control> ControlsAt(Study study, IEnumerable<TerminalRef> ends)
    {
        var near = study.Paths.ControlsNear(ends, out _);
        return [.. study.Controls.Where(c => near.Contains(c.Name, Names.Comparer))];
    }

    // Fewest controls moved first, in file order.
    private static IEnumerable<ImmutableArray<Operation.Set>> Combinations(ImmutableArray<Control> controls)
    {
        for (var moved = 0; moved <= controls.Length; moved++)
        {
            foreach (var combination in Of(controls, moved))
            {
                yield return combination;
            }
        }
    }

    private static IEnumerable<ImmutableArray<Operation.Set>> Of(ImmutableArray<Control> controls, int moved)
    {
        if (moved == 0)
        {
            return [[]];
        }

        return Enumerable.Range(0, controls.Length).SelectMany(i => controls[i].Positions
            .Where(p => !Names.Same(p, controls[i].Rest))
            .SelectMany(p => Of(controls[(i + 1)..], moved - 1).Select(rest => rest.Insert(0, new Operation.Set(controls[i].Name, p)))));
    }

    private static Finding Found(Paths paths, Part part)
    {
        var box = paths.Models[part.Name].Controller!;
        var supply = new TerminalRef(part.Name, box.Supply);
        var ground = new TerminalRef(part.Name, box.Ground);
        var plusRail = paths.Joined(paths.Plus, t => t.Carries);
        var minusRail = paths.Joined(paths.Minus, t => t.Carries);
        if (!plusRail.Contains(supply))
        {
            return Missing(paths, part, supply, "its supply", "{box} never wakes: no feed reaches {terminal}, its supply.");
        }

        if (!minusRail.Contains(ground))
        {
            return Missing(paths, part, ground, "its ground", "{box} never wakes: {terminal}, its ground, has no way back to the supply.");
        }

        var names = box.Awake.NamesUsed().ToHashSet(Names.Comparer);
        var lost = box.Inputs.Where(i => names.Contains(i.Name)).FirstOrDefault(i => !(i.ActiveAtGround ? minusRail : plusRail).Contains(new TerminalRef(part.Name, i.Terminal)));
        return lost is not null
            ? Missing(paths, part, new TerminalRef(part.Name, lost.Terminal), "what wakes it", lost.ActiveAtGround
                ? "{box} never wakes: {terminal} is what wakes it, and no switch joins it to ground."
                : "{box} never wakes: {terminal} is what wakes it, and no feed reaches it.")
            : Missing(paths, part, supply, "all its leads", "{box} never wakes, although its leads are all drawn: in no position of any control is its awake condition true.");
    }

    private static Finding Missing(Paths paths, Part part, TerminalRef at, string lead, string what) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfTerminal(at),
        what,
        "Asleep, every output stays off: the whole bike looks dead although nothing is broken.",
        "Look for the wire to {terminal} that is not drawn yet. If it is there, look at what lies in its way: fuse, lock, plug. Then read the awake line of {box} against its manual.",
        [
            Evidence.Of("box", part.Name),
            Evidence.Of("terminal", Called.At(paths, at)),
            Evidence.Of("lead", lead),
        ]);
}

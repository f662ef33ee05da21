using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>One wire a step, power off: feed first, way back second, what carries the key last.</summary>
internal static class Connecting
{
    private const double HandMetres = 0.3;

    public static void Write(Site site, Steps steps)
    {
        foreach (var starter in site.NewParts.Where(Risky.IsStarter))
        {
            steps.Add(Act.Connect, $"Clamp {starter.Name} on the bench, its pinion clear of everything.", s => s with { Part = starter.Name, Marks = [new Mark(new TerminalRef(starter.Name, ""), null)], Cautions = site.Once.Say(Cautions.Starter) });
        }

        foreach (var part in site.AsideBefore.Except(site.Aside, Names.Comparer))
        {
            steps.Add(Act.Connect, $"{part}: its leads on again.", s => s with { Part = part });
        }

        foreach (var part in site.NewParts.Where(p => site.Fuses.ContainsKey(p.Name)))
        {
            steps.Add(Act.Connect, $"Put the {Fetching.FuseText(site.Fuses[part.Name])} into {part.Name}.", s => s with
            {
                Marks = [new Mark(new TerminalRef(part.Name, ""), null)],
                Cautions = site.Once.Say(Cautions.Rings, Cautions.FuseFirst),
            });
        }

        foreach (var part in site.NewParts.Where(p => Fetching.IsFuse(p) && !site.Fuses.ContainsKey(p.Name) && p.Settings.Number("rating") is not null))
        {
            steps.Add(Act.Connect, $"Put the {Fetching.FuseText(part.Settings.Number("rating")!.Value)} into {part.Name}.", s => s with { Marks = [new Mark(new TerminalRef(part.Name, ""), null)] });
        }

        var keyWires = KeyWires(site);
        foreach (var wire in site.NewWires.OrderBy(w => keyWires.Contains(w.Name)))
        {
            steps.Add(Act.Connect, Text(site, wire), s => s with
            {
                Wire = wire.Name,
                Marks = [site.Mark(wire.From), site.Mark(wire.To)],
                Cautions = site.Once.Say(keyWires.Contains(wire.Name) ? [Cautions.Rings, Cautions.LiveKey] : [Cautions.Rings]),
            });
        }

        foreach (var part in site.NewParts)
        {
            LeadInPlace(site, part, steps);
            Caps(site, part, steps);
        }
    }

    private static string Text(Site site, Wire wire)
    {
        var looks = Fetching.Looks(wire);
        var named = wire.NameIsDerived ? "Wire" : wire.Name;
        foreach (var (near, far) in new[] { (wire.From, wire.To), (wire.To, wire.From) })
        {
            if (near.Equals(site.Whole.Feed) || near.Equals(site.Whole.Return))
            {
                var clip = near.Equals(site.Whole.Plus) ? "red" : "black";
                var cut = near.Equals(site.Whole.Feed) && wire.Length.Metres > HandMetres ? " No fuse yet and longer than a hand: on the bench use at most 0.3 m." : "";
                return $"{named} ({looks}): to {site.Mark(far)}. On its end for {site.Mark(near)} the {clip} clip lead, capped until power-up.{cut}";
            }

            if (site.StandIns.TryGetValue(near.Part, out var used) && StandIns.CanBeLead(site.Whole.Loom, near.Part))
            {
                return $"{named} ({looks}): to {site.Mark(far)}. Its end for {site.Mark(near)} stays free for {Spoken.Known(used)}.";
            }
        }

        return $"{named} ({looks}): from {site.Mark(wire.From)} to {site.Mark(wire.To)}.";
    }

    private static HashSet<string> KeyWires(Site site)
    {
        var parts = site.Key.Select(k => site.PartOf(k.Control)?.Name).OfType<string>().ToHashSet(Names.Comparer);
        return site.NewWires.Where(w => parts.Contains(w.From.Part) || parts.Contains(w.To.Part)).Select(w => w.Name).ToHashSet(Names.Comparer);
    }

    private static void LeadInPlace(Site site, Part part, Steps steps)
    {
        if (!site.StandIns.TryGetValue(part.Name, out var lead) || !site.IsKey(part.Name))
        {
            return;
        }

        var position = site.Key.First(k => Names.Same(k.Control, part.Name)).Position;
        if (Hand.Pair(site, part, position) is { } pair)
        {
            steps.Add(Act.Connect, $"In place of {part.Name}: {lead}, its bench switch open, between the wire for {site.Mark(pair.A)} and the wire for {site.Mark(pair.B)}.", s => s with
            {
                Marks = [site.Mark(pair.A), site.Mark(pair.B)],
                Cautions = site.Once.Say(Cautions.LiveKey),
            });
        }
    }

    // Leads that nothing in this stage uses; a bare terminal of a box or a button carries no lead, unless the file says so.
    private static void Caps(Site site, Part part, Steps steps)
    {
        var model = site.Model(part.Name);
        var unused = part.Settings.Words("unused");
        ImmutableArray<Mark> free =
        [
            .. model.Terminals
                .Where(t => !model.Sights.IsEmpty || unused.Contains(t.Mark, Names.Comparer))
                .Select(t => new TerminalRef(part.Name, t.Mark))
                .Where(t => !Hand.IsWired(site, t) && !site.StandIns.ContainsKey(part.Name) && !model.Joints.Any(j => Names.Same(j.Terminal, t.Terminal)))
                .Select(site.Mark),
        ];
        if (!free.IsEmpty)
        {
            steps.Add(Act.Connect, $"Cap what stays free: {string.Join(", ", free)}.", s => s with { Marks = free, Cautions = site.Once.Say(Cautions.BareEnds) });
        }
    }
}

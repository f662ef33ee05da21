using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>What an ohmmeter must show before power, computed on exactly what is connected, supply off.</summary>
internal static class Measuring
{
    private const string TipsTogether = "Tips together first: below 0.5 Ω.";

    public static void Write(Site site, Steps steps)
    {
        var rig = new Rig(site.Connected);
        var (feed, back) = (site.Whole.Feed, site.Whole.Return);
        Add(site, steps, rig, $"From the clip for {site.Mark(feed)} to the clip for {site.Mark(back)}.", feed, back, plain: false);
        foreach (var part in site.NewParts.Where(p => site.Model(p.Name).Controller is not null))
        {
            var ground = new TerminalRef(part.Name, site.Model(part.Name).Controller!.Ground);
            Add(site, steps, rig, $"From {site.Mark(ground)} to the clip for {site.Mark(back)}: the box's own ground.", ground, back, plain: true);
        }

        var touched = site.NewWires.SelectMany(w => new[] { w.From.Part, w.To.Part }).ToHashSet(Names.Comparer);
        foreach (var part in site.Whole.Loom.Parts.Where(p => touched.Contains(p.Name) && site.Model(p.Name).Controller is null))
        {
            foreach (var control in site.Model(part.Name).Controls)
            {
                EachPosition(site, steps, rig, part, control);
            }
        }

        foreach (var load in site.Line.Loads)
        {
            Load(site, steps, rig, load);
        }
    }

    // Every control with a new wire on it, in every position: a lock that works in one can be a dead short one click later. Rest comes last and is left so.
    private static void EachPosition(Site site, Steps steps, Rig rig, Part part, Control control)
    {
        if (LiveSide(site, part) is not { } live)
        {
            return;
        }

        var fed = site.Whole.Joined(site.Whole.Feed, t => t.Via is Via.Wire or Via.Joint or Via.Fuse);
        var isLead = site.StandIns.ContainsKey(part.Name);
        var used = site.Line.Do.Where(o => Names.Same(o.Control, control.Name)).Select(o => o.Position);
        var positions = (isLead ? used : control.Positions.Where(p => !Names.Same(p, control.Rest))).Append(control.Rest);
        foreach (var position in positions)
        {
            var operation = new Operation.Set(control.Name, position);
            rig.Do(operation);
            Add(site, steps, rig, $"{Hand.Does(site, operation)} From {(isLead ? "the wire for " : "")}{site.Mark(live)} to the clip for {site.Mark(site.Whole.Return)}.", live, site.Whole.Return, plain: false, operation, fed.Contains(live));
        }
    }

    // The wired terminal of a control that does not sit on the way back.
    private static TerminalRef? LiveSide(Site site, Part part)
    {
        var grounded = site.Whole.Joined(site.Whole.Return, t => t.Via is Via.Wire or Via.Joint);
        var wired = site.Model(part.Name).Terminals.Select(t => new TerminalRef(part.Name, t.Mark)).Where(t => Hand.IsWired(site, t) && !grounded.Contains(t)).ToList();
        var fed = site.Whole.Joined(site.Whole.Feed, t => t.Via is Via.Wire or Via.Joint or Via.Fuse);
        return wired.Where(fed.Contains).Concat(wired).Cast<TerminalRef?>().FirstOrDefault();
    }

    private static void Load(Site site, Steps steps, Rig rig, string load)
    {
        var tie = Sighted.Tie(site.Whole, load);
        var (feed, back) = Sighted.Ends(site, tie);
        var from = site.Line.Output is { } output && site.Line.Loads.Length == 1 ? output : feed;
        var plain = site.Model(tie.Part!.Name).Sights.All(s => s is not Sight.Lamp { Law: LightLaw.Led });
        Add(site, steps, rig, $"From {site.Mark(from)} to the clip for {site.Mark(site.Whole.Return)}: {Spoken.Of(load)} and its way back.", from, site.Whole.Return, plain);
        Add(site, steps, rig, $"From {site.Mark(back)} to the clip for {site.Mark(site.Whole.Return)}: its way back alone.", back, site.Whole.Return, plain: true);
    }

    private static void Add(Site site, Steps steps, Rig rig, string text, TerminalRef red, TerminalRef black, bool plain, Operation.Set? done = null, bool isFeed = false)
    {
        var band = Bands.Of(rig.Ohms(red, black), plain);
        var shorted = isFeed && band.Least == 0 ? ": feed and ground are joined here, do not power it" : "";
        steps.Add(Act.Measure, text, s => s with
        {
            Do = done,
            Marks = [site.Mark(red), site.Mark(black)],
            Meter = new MeterCard(Dial.Ohms, "V Ω", "COM", site.Mark(red), site.Mark(black), TipsTogether, PowerOn: false),
            Expect = [new Expectation($"{site.Mark(red)} to {site.Mark(black)}", Bands.Words(band) + shorted, band)],
            Cautions = site.Once.Say(Cautions.OhmsPowerOff),
        });
    }
}

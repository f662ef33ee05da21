using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Bench;

/// <summary>The supply measured and clipped on, plus first, and taken off again, minus first.</summary>
internal static class Clips
{
    public static void On(Site site, Steps steps, Rig rig)
    {
        var (plus, minus) = (site.Mark(site.Whole.Plus), site.Mark(site.Whole.Minus));
        if (site.IsFirst)
        {
            Supply(site, steps);
        }

        if (site.MeteredFuse is { } fuse)
        {
            var (out_, wires, them) = (new Mark(fuse, null), Wires(site, fuse), WiresOn(site, fuse).Count() == 1 ? "its end" : "their ends together");
            steps.Add(Act.PowerUp, $"Meter in line, behind the small fuse. Take {wires} off {out_} and hold {them} in the clip of the meter's black lead; the clip of the meter's red lead goes on {out_}. All the current now goes through the meter.", s => s with
            {
                Marks = [out_],
                Meter = new MeterCard(Dial.Amps, "10 A", "COM", out_, new Mark(fuse, null) { Instead = $"{wires}, taken off " }, "Clips on both leads. The 10 A socket of some meters has no fuse: it relies on the small one.", PowerOn: false),
                Cautions = site.Once.Say(Cautions.AmpsInLine),
            });
        }

        // Up to here it lay with the other ends, where ohms are read.
        foreach (var (wire, end) in site.StarterLeads)
        {
            steps.Add(Act.PowerUp, $"{wire.Name}: its end {(end == site.Whole.Feed ? $"out of the {Colour(site, end)} clip lead" : $"off {site.Mark(end)}")}, booted, clear of everything. It goes on last.", s => s with { Wire = wire.Name, Marks = [site.Mark(end)] });
        }

        var hot = site.IsBench ? Cautions.HotOnSupply : Cautions.Hot;
        if (site.HasBack)
        {
            steps.Add(Act.PowerUp, $"{Lead(site, site.Whole.Plus)} goes on {plus}{(site.IsBench ? ", output still off" : "")}.", s => s with { Marks = [plus], Cautions = site.Once.Say(Cautions.FirstPower, hot) });
            steps.Add(Act.PowerUp, $"{Lead(site, site.Whole.Minus)} goes on {minus}{(site.IsBench ? ", then the output on" : "")}.", Live(minus));
        }
        else
        {
            var (feed, back) = (site.Mark(site.Whole.Feed), site.Mark(site.Whole.Return));
            steps.Add(Act.PowerUp, $"{Lead(site, site.Whole.Feed)} goes on {feed}{(site.IsBench ? ", then the output on" : "")}. Nothing goes on {back} yet.", Live(feed));
        }

        Func<Step, Step> Live(Mark mark) => s => s with { Marks = [mark], PowerOn = true, Expect = Expecting.Of(site, rig.Now), Cautions = [.. site.HasBack ? [] : site.Once.Say(Cautions.FirstPower), .. site.IsBench ? [] : site.Once.Say(Cautions.LastClip)] };
    }

    /// <summary>The starter's lead, when all else is on: a start contact that is closed unasked turns it only now.</summary>
    public static void StarterOn(Site site, Steps steps, Rig rig)
    {
        foreach (var (wire, end) in site.StarterLeads)
        {
            steps.Add(Act.PowerUp, $"{wire.Name}: its end on {site.Mark(end)}, booted, and nobody near the starter. It is the last lead to go on.", s => s with { Wire = wire.Name, Marks = [site.Mark(end)], PowerOn = true, Expect = Expecting.Of(site, rig.Now), Cautions = [Cautions.StarterLead] });
        }
    }

    /// <summary>The starter's lead, before all else.</summary>
    public static void StarterOff(Site site, Steps steps)
    {
        foreach (var (wire, end) in site.StarterLeads)
        {
            steps.Add(Act.PowerDown, $"{wire.Name}: its end off {site.Mark(end)}, booted.", s => s with { Wire = wire.Name, Marks = [site.Mark(end)], PowerOn = true, Cautions = [Cautions.StarterLead] });
        }
    }

    /// <summary>The step that takes power off is still powered until it is done.</summary>
    public static void Off(Site site, Steps steps)
    {
        var (plus, minus) = (site.Mark(site.Whole.Plus), site.Mark(site.Whole.Minus));
        if (site.IsBench)
        {
            steps.Add(Act.PowerDown, "Output off.", s => s with { PowerOn = true });
        }

        if (site.HasBack)
        {
            steps.Add(Act.PowerDown, $"{Lead(site, site.Whole.Minus)} comes off {minus}, capped.", s => s with { Marks = [minus], PowerOn = !site.IsBench });
            steps.Add(Act.PowerDown, $"{Lead(site, site.Whole.Plus)} comes off {plus}, capped.", s => s with { Marks = [plus] });
        }
        else
        {
            steps.Add(Act.PowerDown, $"{Lead(site, site.Whole.Feed)} comes off {site.Mark(site.Whole.Feed)}, capped.", s => s with { Marks = [site.Mark(site.Whole.Feed)], PowerOn = !site.IsBench });
        }

        foreach (var (wire, end) in site.StarterLeads)
        {
            steps.Add(Act.PowerDown, $"{wire.Name}: its end back {(end == site.Whole.Feed ? $"in the {Colour(site, end)} clip lead, capped with the others" : $"on {site.Mark(end)}")}.", s => s with { Wire = wire.Name, Marks = [site.Mark(end)] });
        }

        if (site.MeteredFuse is { } fuse)
        {
            steps.Add(Act.PowerDown, $"Meter out: {Wires(site, fuse)} back on {new Mark(fuse, null)}, red plug back to V.", s => s with { Marks = [new Mark(fuse, null)], Cautions = site.Once.Say(Cautions.AmpsSocket) });
        }
    }

    private static IEnumerable<string> WiresOn(Site site, TerminalRef at) => site.Connected.Wires.Where(w => w.From == at || w.To == at).Select(w => w.Name);

    private static string Wires(Site site, TerminalRef at) => string.Join(" and ", WiresOn(site, at));

    private static string Colour(Site site, TerminalRef post) => post.Equals(site.Whole.Plus) ? "red" : "black";

    // By its wire: the meter has a red and a black clip of its own.
    private static string Lead(Site site, TerminalRef post)
    {
        var wires = site.Connected.Wires.Where(w => (w.From == post || w.To == post) && !site.StarterLeads.Any(l => l.Wire == w && l.End == post)).ToList();
        var named = wires.Exists(w => w.NameIsDerived) ? $"the wire for {site.Mark(post)}" : $"wire {string.Join(" and wire ", wires.Select(w => w.Name))}";
        return $"{(post.Equals(site.Whole.Plus) ? "Red" : "Black")} clip lead on the end of {named} (not the meter's)";
    }

    // Nothing is clipped on yet: what it gives by itself.
    private static void Supply(Site site, Steps steps)
    {
        var source = site.Whole.Source!;
        var alone = new Rig(site.Connected with { Parts = [site.Connected.Part(source.Name)!], Wires = [] });
        if (alone.Volts(site.Whole.Plus, site.Whole.Minus) is not { } volts)
        {
            return;
        }

        var band = Bands.Of(volts);
        var text = site.IsBench
            ? $"{source.Name}, nothing on it: output on, set {new Quantities.Voltage(source.Settings.Number("volts") ?? volts.Volts)}, limit {new Quantities.Current(site.Model(source.Name).Supply!.LimitAmps!.Value)}, read it, output off."
            : $"Measure {source.Name} by itself, rested an hour. Below {new Quantities.Voltage(band.Least!.Value)}: charge it first. Expected volts below hold for a battery resting at {volts}; where yours rests lower or higher, every live point reads as much lower or higher.";
        steps.Add(Act.PowerUp, text, s => s with
        {
            Marks = [site.Mark(site.Whole.Plus), site.Mark(site.Whole.Minus)],
            PowerOn = true,
            Meter = MeterCards.Volts(site, site.Whole.Plus, site.Whole.Minus),
            Expect = [new Expectation($"volts of {source.Name}", Bands.Words(band), band)],
            Cautions = site.Once.Say(Cautions.VoltsAcross, Cautions.LiveProbe),
        });
    }
}

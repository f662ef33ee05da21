using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <content>What is read with a meter while it is on.</content>
internal sealed partial class Powering
{
    // Below this a drop is too small for a hand meter to tell (judgement, no source).
    private const double WorthADropAmps = 0.5;

    // A feed without a load shows itself by its volts alone.
    private void FeedEnd()
    {
        if (site.Line.End is not { } end || _rig.Volts(end, site.Whole.Return) is not { } volts)
        {
            return;
        }

        Volts(Act.Operate, $"Measure the feed: red on {site.Mark(end)}, black on {site.Mark(site.Whole.Return)}.", end, site.Whole.Return, $"volts at {site.Mark(end)}", Bands.Of(volts));
    }

    private void Volts(Act act, string text, TerminalRef red, TerminalRef black, string what, Band band, ImmutableArray<Expectation> seen = default, ImmutableArray<string> cautions = default) =>
        steps.Add(act, text, s => s with
        {
            Marks = [site.Mark(red), site.Mark(black)],
            PowerOn = true,
            Meter = MeterCards.Volts(site, red, black),
            Expect = [.. seen.IsDefault ? [] : seen, new Expectation(what, Bands.Words(band), band)],
            Cautions = [.. site.Once.Say(Cautions.LiveProbe), .. cautions.IsDefault ? [] : cautions],
        });

    private void ReadAll(Act act, Line line)
    {
        foreach (var load in line.Loads.OrderByDescending(l => Math.Abs(Seen(l)?.Current.Amps ?? 0)))
        {
            Read(act, load);
        }
    }

    // What stays on after the press is read with both hands free.
    private bool StaysOn(Operation.Set press, Line line)
    {
        var control = Control(press.Control);
        return control.Momentary && new Rig(site.Connected).Play([.. _done, new Operation.Set(control.Name, control.Rest)])[^1] is var after && line.Loads.All(l => IsOn(after, l));
    }

    // What flashes shows its highest reading while it is lit: the state the volts are computed in.
    private void Read(Act act, string load)
    {
        if (Seen(load) is not { } seen)
        {
            return;
        }

        var (feed, back) = Sighted.Ends(site.Whole, Sighted.Tie(site.Whole, load));
        var volts = _rig.Volts(feed, back) ?? seen.Voltage;
        var highest = _rig.Now.Phases.Length == 1 ? "" : "highest ";
        Volts(
            act,
            $"Measure at {Spoken.Of(load)}: red on {site.Mark(feed)}, black on {site.Mark(back)}.",
            feed,
            back,
            $"{highest}volts at {Spoken.Of(load)}",
            Bands.Of(volts),
            [new Expectation(load, Words.Of(seen.Symbol))],
            Warm(load));
        if (act != Act.Operate || Math.Abs(seen.Current.Amps) < WorthADropAmps)
        {
            return;
        }

        Drop($"Lost on the way back of {Spoken.Of(load)}", back, site.Whole.Return);
        Drop($"Lost on the feed of {Spoken.Of(load)}", site.Whole.Feed, feed);

        void Drop(string what, TerminalRef red, TerminalRef black)
        {
            if (!red.Equals(black) && _rig.Volts(red, black) is { } read)
            {
                (red, black, var lost) = MeterCards.Upright(red, black, read);
                Volts(act, $"{what}: red on {site.Mark(red)}, black on {site.Mark(black)}.", red, black, $"{highest}volts lost", Bands.OfDrop(lost));
            }
        }
    }

    private Seen? Seen(string load) => _rig.Now.Seen.FirstOrDefault(s => s.Name == load);
}

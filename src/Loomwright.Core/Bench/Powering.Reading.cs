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

    /// <param name="Text">What it is, up to the colon.</param>
    /// <param name="Red">Where the red tip goes.</param>
    /// <param name="Black">Where the black tip goes.</param>
    /// <param name="What">What the meter then shows.</param>
    /// <param name="Band">Where it should be.</param>
    /// <param name="Load">The load read at, to be looked at too; null on its ways.</param>
    private sealed record Reading(string Text, TerminalRef Red, TerminalRef Black, string What, Band Band, string? Load = null);

    // A feed without a load shows itself by its volts alone.
    private void FeedEnd()
    {
        if (site.Line.End is { } end && _rig.Volts(end, site.Whole.Return) is { } volts)
        {
            Tell(Act.Operate, new Reading("Measure the feed", end, site.Whole.Return, $"volts at {site.Mark(end)}", Bands.Of(volts)));
        }
    }

    // With what is pressed for it alone, where that is for seconds: then no hand is left to hold a tip.
    private void Tell(Act act, Reading read, Operation.Set? press = null)
    {
        var (red, black) = (site.Mark(read.Red), site.Mark(read.Black));
        var text = press is null
            ? $"{read.Text}: red on {red}, black on {black}."
            : $"{read.Text}: both clips on first, red on {red}, black on {black}. {Hand.Does(site, press)} Read it, ten seconds at most.";
        steps.Add(act, text, s => s with
        {
            Do = press,
            Marks = [red, black],
            PowerOn = true,
            Meter = MeterCards.Volts(site, read.Red, read.Black),
            Expect = [.. read.Load is { } load && Seen(load) is { } seen ? [new Expectation(load, Words.Of(seen.Symbol))] : Array.Empty<Expectation>(), new Expectation(read.What, Bands.Words(read.Band), read.Band)],
            Cautions = [.. site.Once.Say(Cautions.LiveProbe), .. read.Load is { } hot ? Warm(hot) : []],
        });
    }

    private void ReadAll(Act act, Line line)
    {
        foreach (var read in Readings(act, line).ToList())
        {
            Tell(act, read);
        }
    }

    private IEnumerable<Reading> Readings(Act act, Line line) => line.Loads.OrderByDescending(l => Math.Abs(Seen(l)?.Current.Amps ?? 0)).SelectMany(l => Readings(act, l));

    // What stays on after the press is read with both hands free.
    private bool StaysOn(Operation.Set press, Line line)
    {
        var control = Control(press.Control);
        return control.Momentary && new Rig(site.Connected).Play([.. _done, new Operation.Set(control.Name, control.Rest)])[^1] is var after && line.Loads.All(l => IsOn(after, l));
    }

    // What flashes shows its highest reading while it is lit: the state the volts are computed in.
    private IEnumerable<Reading> Readings(Act act, string load)
    {
        if (Seen(load) is not { } seen)
        {
            yield break;
        }

        var (feed, back) = Sighted.Ends(site.Whole, Sighted.Tie(site.Whole, load));
        var volts = _rig.Volts(feed, back) ?? seen.Voltage;
        var highest = _rig.Now.Phases.Length == 1 ? "" : "highest ";
        yield return new Reading($"Measure at {Spoken.Of(load)}", feed, back, $"{highest}volts at {Spoken.Of(load)}", Bands.Of(volts), load);
        if (act != Act.Operate || Math.Abs(seen.Current.Amps) < WorthADropAmps)
        {
            yield break;
        }

        foreach (var (way, one, other) in new[] { ("way back", back, site.Whole.Return), ("feed", site.Whole.Feed, feed) })
        {
            if (!one.Equals(other) && _rig.Volts(one, other) is { } read)
            {
                var (red, black, lost) = MeterCards.Upright(one, other, read);
                yield return new Reading($"Lost on the {way} of {Spoken.Of(load)}", red, black, $"{highest}volts lost", Bands.OfDrop(lost));
            }
        }
    }

    private Seen? Seen(string load) => _rig.Now.Seen.FirstOrDefault(s => s.Name == load);
}

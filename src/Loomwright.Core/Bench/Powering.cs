using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Everything done with power on, walked through on a rig in the order a person does it: each expectation is the frame just then.</summary>
internal sealed class Powering(Site site, Steps steps)
{
    private readonly Rig _rig = new(site.Connected);
    private readonly List<Frame> _frames = [];
    private readonly List<Operation> _done = [];

    // Below this a drop is too small for a hand meter to tell (judgement, no source).
    private const double WorthADropAmps = 0.5;

    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(5);

    /// <summary>Every frame gone through.</summary>
    public IReadOnlyList<Frame> Frames => _frames;

    public void Write()
    {
        PowerUp();
        FeedEnd();
        Show(Act.Operate, site.Line);
        Again();
        PowerDown();
    }

    private void PowerUp()
    {
        _frames.Add(_rig.Now);
        Clips.On(site, steps, _rig);
        foreach (var key in site.Key)
        {
            Do(Act.PowerUp, key);
        }
    }

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

    private void Show(Act act, Line line)
    {
        var operations = line.Do.Where(o => !site.Key.Contains(o)).ToImmutableArray();
        foreach (var operation in operations)
        {
            Do(act, operation);
        }

        var isLetGoFirst = operations is [.., var last] && StaysOn(last, line);
        if (!isLetGoFirst)
        {
            ReadAll(act, line);
            EndAndBack(act, line);
        }

        foreach (var operation in operations.Reverse())
        {
            Undo(act, operation, line, isLetGoFirst && operation == operations[^1]);
        }

        foreach (var way in act == Act.Operate ? line.Also : [])
        {
            foreach (var operation in way.Where(o => !site.Key.Contains(o)))
            {
                Do(act, operation);
            }

            foreach (var operation in way.Where(o => !site.Key.Contains(o)).Reverse())
            {
                Undo(act, operation, line, isRead: false);
            }
        }
    }

    private void EndAndBack(Act act, Line line)
    {
        foreach (var end in act == Act.Operate ? line.Ends : [])
        {
            Do(act, end);
            Do(act, new Operation.Set(end.Control, Control(end.Control).Rest));
        }
    }

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

        var (feed, back) = Sighted.Ends(site, Sighted.Tie(site.Whole, load));
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
            if (!red.Equals(black) && _rig.Volts(red, black) is { } lost)
            {
                Volts(act, $"{what}: red on {site.Mark(red)}, black on {site.Mark(black)}.", red, black, $"{highest}volts lost", Bands.OfDrop(lost));
            }
        }
    }

    private Seen? Seen(string load) => _rig.Now.Seen.FirstOrDefault(s => s.Name == load);

    // A button that set something lasting is pressed once more, where that ends it.
    private void Undo(Act act, Operation.Set operation, Line line, bool isRead)
    {
        var control = Control(operation.Control);
        var rest = new Operation.Set(operation.Control, control.Rest);
        Do(act, rest);
        if (isRead)
        {
            ReadAll(act, line);
            EndAndBack(act, line);
        }

        if (!control.Momentary || !line.Loads.Any(IsOn))
        {
            return;
        }

        var runsOut = RunsOut(line);
        if (EndsBy(operation, rest, line))
        {
            Do(act, operation, runsOut is { } within ? $" Within {Seconds(within)}; later it has ended by itself." : "");
            Do(act, rest);
            if (act != Act.Operate || runsOut is null)
            {
                return;
            }

            Do(act, operation);
            Do(act, rest);
        }

        if (runsOut is { } time)
        {
            Wait(act, time);
        }
    }

    // How long until the loads end by themselves; null when they do not within a few minutes.
    private TimeSpan? RunsOut(Line line)
    {
        var start = new Rig(site.Connected);
        var frames = start.Play([.. _done, new Operation.Wait(LongestWait)]);
        var from = frames.Last(f => f.Step == _rig.Now.Step).Time;
        return frames.FirstOrDefault(f => f.Time > from && !line.Loads.Any(l => IsOn(f, l)))?.Time - from;
    }

    private void Wait(Act act, TimeSpan time)
    {
        var wait = new Operation.Wait(time);
        var frame = _rig.Do(wait);
        _done.Add(wait);
        _frames.Add(frame);
        steps.Add(act, $"Wait {Seconds(time)} from letting go.", s => s with { Wait = time, PowerOn = true, Expect = Expecting.Of(site, frame) });
    }

    private static string Seconds(TimeSpan time) => FormattableString.Invariant($"{time.TotalSeconds:0.#} s");

    private bool EndsBy(Operation.Set press, Operation.Set letGo, Line line)
    {
        var probe = new Rig(site.Connected).Play([.. _done, press, letGo])[^1];
        return !line.Loads.Any(l => IsOn(probe, l));
    }

    private void Again()
    {
        if (site.Previous is not { } before)
        {
            return;
        }

        if (before.Loads.IsEmpty)
        {
            foreach (var key in site.Key.Reverse())
            {
                Do(Act.Again, new Operation.Set(key.Control, Control(key.Control).Rest));
            }

            foreach (var key in site.Key)
            {
                Do(Act.Again, key);
            }

            return;
        }

        Show(Act.Again, before);
    }

    private void PowerDown()
    {
        foreach (var key in site.Key.Reverse())
        {
            Do(Act.PowerDown, new Operation.Set(key.Control, Control(key.Control).Rest));
        }

        Clips.Off(site, steps);
    }

    private void Do(Act act, Operation.Set operation, string more = "")
    {
        var frame = _rig.Do(operation);
        _done.Add(operation);
        _frames.Add(frame);
        steps.Add(act, Hand.Does(site, operation) + more, s => s with
        {
            Do = operation,
            PowerOn = true,
            Expect = Expecting.Of(site, frame),
            Cautions = [.. site.Line.Loads.Where(IsOn).SelectMany(l => Warm(l))],
        });
    }

    private bool IsOn(string load) => IsOn(_rig.Now, load);

    private static bool IsOn(Frame frame, string load) => frame.Seen.Any(s => s.Name == load && s.Symbol is not (Symbol.Dark or Symbol.Silent or Symbol.Rests));

    private ImmutableArray<string> Warm(string load)
    {
        var tie = Sighted.Tie(site.Whole, load);
        return site.Model(tie.Part!.Name).Sights.First(s => Names.Same(tie.Element!.Name, s.Element)) switch
        {
            Sight.Horn => site.Once.Say(Cautions.Horn),
            Sight.Lamp { Law: LightLaw.Filament } => site.Once.Say(Cautions.HotLamp),
            _ => site.Once.Say([.. Risky.Cautions(tie.Part)]),
        };
    }

    private Control Control(string name) => site.Model(site.PartOf(name)!.Name).Controls.First(c => Names.Same(c.Name, name));
}

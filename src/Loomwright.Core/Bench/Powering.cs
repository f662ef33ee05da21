using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Everything done with power on, walked through on a rig in the order a person does it: each expectation is the frame just then.</summary>
internal sealed class Powering(Site site, Steps steps)
{
    private readonly Rig _rig = new(site.Connected);
    private readonly List<Frame> _frames = [];
    private readonly List<Operation> _done = [];

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
        var isBench = site.Model(site.Whole.Source!.Name).Supply!.LimitAmps is not null;
        var (plus, minus) = (site.Mark(site.Whole.Plus), site.Mark(site.Whole.Minus));
        var metered = site.IsMetered && !isBench;
        steps.Add(Act.PowerUp, $"Red clip on {plus}{(isBench ? ", output still off" : metered ? ", with the meter in line" : "")}.", s => s with
        {
            Marks = [plus],
            Meter = metered ? InLine() : null,
            Cautions = site.Once.Say(Cautions.FirstPower, Cautions.Hot),
        });
        _frames.Add(_rig.Now);
        steps.Add(Act.PowerUp, isBench ? $"Black clip on {minus}, then the output on." : $"Black clip on {minus}.", s => s with
        {
            Marks = [minus],
            PowerOn = true,
            Expect = Expecting.Of(site, _rig.Now),
        });
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

        var band = Bands.Of(volts);
        steps.Add(Act.Operate, $"Measure the feed: red on {site.Mark(end)}, black on {site.Mark(site.Whole.Return)}.", s => s with
        {
            Marks = [site.Mark(end), site.Mark(site.Whole.Return)],
            PowerOn = true,
            Meter = Volts(end, site.Whole.Return),
            Expect = [new Expectation($"volts at {site.Mark(end)}", Bands.Words(band), band)],
        });
    }

    private MeterCard Volts(TerminalRef red, TerminalRef black) =>
        new(Dial.Volts, "V Ω", "COM", site.Mark(red), site.Mark(black), "Tips together first: 0.00 V.", PowerOn: true);

    private MeterCard InLine() => new(
        Dial.Amps, "10 A", "COM", new Mark(site.Whole.Plus, "its post"), new Mark(site.Whole.Plus, "the red clip"), "It stays in line for the whole stage.", PowerOn: false);

    private void Show(Act act, Line line)
    {
        var operations = line.Do.Where(o => !site.Key.Contains(o)).ToImmutableArray();
        foreach (var operation in operations)
        {
            Do(act, operation);
        }

        foreach (var load in line.Loads)
        {
            Read(act, load, isOnly: operations.IsEmpty);
        }

        foreach (var operation in operations.Reverse())
        {
            Undo(act, operation, line);
        }
    }

    private void Read(Act act, string load, bool isOnly)
    {
        if (_rig.Now.Seen.FirstOrDefault(s => s.Name == load) is not { } seen)
        {
            return;
        }

        if (_rig.Now.Phases.Length != 1)
        {
            if (isOnly)
            {
                steps.Add(act, $"Look at {Spoken.Of(load)}.", s => s with { PowerOn = true, Expect = [new Expectation(load, Words.Of(seen.Symbol))] });
            }

            return;
        }

        var (feed, back) = Sighted.Ends(site, Sighted.Tie(site.Whole, load));
        var band = Bands.Of(_rig.Volts(feed, back) ?? seen.Voltage);
        steps.Add(act, $"Measure at {Spoken.Of(load)}: red on {site.Mark(feed)}, black on {site.Mark(back)}.", s => s with
        {
            Marks = [site.Mark(feed), site.Mark(back)],
            PowerOn = true,
            Meter = Volts(feed, back),
            Expect = [new Expectation(load, Words.Of(seen.Symbol)), new Expectation($"volts at {Spoken.Of(load)}", Bands.Words(band), band)],
            Cautions = Warm(load),
        });
    }

    // A button that set something lasting is pressed once more, where that ends it.
    private void Undo(Act act, Operation.Set operation, Line line)
    {
        var control = Control(operation.Control);
        var rest = new Operation.Set(operation.Control, control.Rest);
        Do(act, rest);
        if (control.Momentary && line.Loads.Any(IsOn) && EndsBy(operation, rest, line))
        {
            Do(act, operation);
            Do(act, rest);
        }
    }

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

        steps.Add(Act.PowerDown, $"Black clip off {site.Mark(site.Whole.Minus)}.", s => s with { Marks = [site.Mark(site.Whole.Minus)], Cautions = site.IsMetered ? site.Once.Say(Cautions.AmpsSocket) : [] });
        steps.Add(Act.PowerDown, $"Red clip off {site.Mark(site.Whole.Plus)}.", s => s with { Marks = [site.Mark(site.Whole.Plus)] });
    }

    private void Do(Act act, Operation.Set operation)
    {
        var frame = _rig.Do(operation);
        _done.Add(operation);
        _frames.Add(frame);
        steps.Add(act, Hand.Does(site, operation), s => s with
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
            _ => [],
        };
    }

    private Control Control(string name) => site.Model(site.PartOf(name)!.Name).Controls.First(c => Names.Same(c.Name, name));
}

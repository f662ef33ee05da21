using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Everything done with power on, walked through on a rig in the order a person does it: each expectation is the frame just then.</summary>
internal sealed partial class Powering(Site site, Steps steps)
{
    private readonly Rig _rig = new(site.Connected);
    private readonly List<Frame> _frames = [];
    private readonly List<Operation> _done = [];

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
        KeyOn(Act.PowerUp);
        Clips.StarterOn(site, steps, _rig);
    }

    private void Show(Act act, Line line, bool isRead = true)
    {
        var operations = line.Do.Where(o => !site.Key.Contains(o)).ToImmutableArray();
        foreach (var operation in operations)
        {
            Do(act, operation);
        }

        if (Brief(line) is { } press)
        {
            ShowBriefly(act, line, operations, press);
        }
        else
        {
            ShowAtLeisure(act, line, operations, isRead);
        }

        foreach (var way in act == Act.Operate ? line.Also : [])
        {
            KeyOn(act);
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

    private void ShowAtLeisure(Act act, Line line, ImmutableArray<Operation.Set> operations, bool isRead)
    {
        var isLetGoFirst = operations is [.., var last] && StaysOn(last, line);
        if (!isLetGoFirst && isRead)
        {
            ReadAll(act, line);
            EndAndBack(act, line);
        }

        foreach (var operation in operations.Reverse())
        {
            Undo(act, operation, line, isRead && isLetGoFirst && operation == operations[^1]);
        }
    }

    private void EndAndBack(Act act, Line line)
    {
        foreach (var end in act == Act.Operate ? line.Ends : [])
        {
            Do(act, end);
            Do(act, Rest(end));
        }
    }

    // A button that set something lasting is pressed once more, where that ends it.
    private void Undo(Act act, Operation.Set operation, Line line, bool isRead)
    {
        var control = Control(operation.Control);
        var rest = Rest(operation);
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
        if (site.Again is not { } before)
        {
            return;
        }

        // The key feeds what is for seconds: a look has to do.
        var isBrief = !IsKeyOn;
        if (before.Loads.IsEmpty)
        {
            KeyOff(Act.Again);
        }

        KeyOn(Act.Again);
        if (!before.Loads.IsEmpty)
        {
            Show(Act.Again, before, isRead: !isBrief);
        }
    }

    private void PowerDown()
    {
        Clips.StarterOff(site, steps);
        KeyOff(Act.PowerDown);
        Clips.Off(site, steps);
    }

    private Operation.Set Rest(Operation.Set operation) => new(operation.Control, Control(operation.Control).Rest);

    private bool Stands(Operation.Set operation) => _rig.Now.Controls.Any(c => Names.Same(c.Control, operation.Control) && Names.Same(c.Position, operation.Position));

    private Frame Move(Operation.Set operation)
    {
        var frame = _rig.Do(operation);
        _done.Add(operation);
        _frames.Add(frame);
        return frame;
    }

    private void Do(Act act, Operation.Set operation, string more = "")
    {
        var frame = Move(operation);
        steps.Add(act, Hand.Does(site, operation) + more, s => s with
        {
            Do = operation,
            PowerOn = true,
            Expect = Expecting.Of(site, frame),
            Cautions = [.. site.Line.Loads.Where(IsOn).SelectMany(l => Warm(l))],
        });
    }

    private bool IsOn(string load) => IsOn(_rig.Now, load);

    private static bool IsOn(Frame frame, string load) => frame.Seen.Any(s => s.Name == load && Line.IsOn(s));

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

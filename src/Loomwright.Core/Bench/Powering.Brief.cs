using System.Collections.Immutable;
using Loomwright.Simulation;

namespace Loomwright.Bench;

/// <content>What is made for seconds: on for a look, then once more for every reading, and off again before the next.</content>
internal sealed partial class Powering
{
    private bool IsKeyOn => site.Key.All(Stands);

    private void KeyOn(Act act)
    {
        foreach (var key in site.Key.Where(k => !Stands(k)))
        {
            Do(act, key);
        }
    }

    private void KeyOff(Act act)
    {
        foreach (var key in site.Key.Reverse().Where(Stands))
        {
            Do(act, Rest(key));
        }
    }

    // What to let go of so that whatever is made for seconds ends; null where nothing such is on.
    private Operation.Set? Brief(Line line)
    {
        return IsForSecondsOn(_rig.Now) ? line.Do.Reverse().FirstOrDefault(Ends) : null;

        bool Ends(Operation.Set operation) => !IsForSecondsOn(new Rig(site.Connected).Play([.. _done, Rest(operation)])[^1]);
    }

    private bool IsForSecondsOn(Frame frame) => frame.Seen.Any(s => Line.IsOn(s) && Risky.IsForSeconds(site.Connected.Part(s.Part)!));

    private void ShowBriefly(Act act, Line line, ImmutableArray<Operation.Set> operations, Operation.Set press)
    {
        var readings = act == Act.Operate ? Readings(act, line).Count() : 0;
        Do(act, Rest(press));
        for (var r = 0; r < readings; r++)
        {
            _ = Move(press);
            Tell(act, Readings(act, line).ElementAt(r), press);
            Do(act, Rest(press));
        }

        foreach (var end in act == Act.Operate ? line.Ends : [])
        {
            Do(act, press);
            Do(act, end);
            Do(act, Rest(press));
            Do(act, Rest(end));
        }

        foreach (var operation in operations.Reverse().Where(o => o != press))
        {
            Do(act, Rest(operation));
        }
    }
}

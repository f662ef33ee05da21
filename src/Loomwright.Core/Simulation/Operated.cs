using System.Collections.Immutable;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Simulation;

/// <summary>Finds how to operate the controls so that a function works, moving as few as possible, and does it on the wiring.</summary>
internal static class Operated
{
    private const int MostSettings = 4096;
    private const int MostTimers = 8;

    /// <summary>The wiring settled with the function working; null when no setting of the controls it names makes it work.</summary>
    public static Settled? For(Wiring wiring, Expression works)
    {
        return Find(wiring, works) is { } found ? Play(wiring, found.Setting, found.Wait) : null;
    }

    /// <summary>The controls to move and how long to wait then; null when no setting of the controls it names makes it work.</summary>
    public static (ImmutableArray<(int Control, int Position)> Setting, TimeSpan Wait)? Find(Wiring wiring, Expression works)
    {
        foreach (var setting in Settings(wiring, works))
        {
            if (WaitsToWork(wiring, works, setting) is { } wait)
            {
                return (setting, wait);
            }
        }

        return null;
    }

    /// <summary>Every setting of the controls it names, fewest moved first, then by file order of the controls and of their positions.</summary>
    public static IEnumerable<ImmutableArray<(int Control, int Position)>> Settings(Wiring wiring, Expression works)
    {
        var names = works.NamesUsed().ToHashSet(Names.Comparer);
        var controls = Enumerable.Range(0, wiring.Controls.Length).Where(c => names.Contains(wiring.Controls[c].Name)).ToImmutableArray();
        IEnumerable<ImmutableArray<(int, int)>> some = [[]];
        foreach (var c in controls.Reverse())
        {
            var control = wiring.Controls[c];
            var rest = Wiring.PlaceOf(control, control.Rest) ?? 0;
            var away = Enumerable.Range(0, control.Positions.Length).Where(p => p != rest);
            var others = some.ToList();
            some = away.SelectMany(p => others.Select(s => s.Insert(0, (c, p)))).Concat(others).TakeLast(MostSettings);
        }

        return some.OrderBy(s => s.Length);
    }

    /// <summary>How long until it works, told by the function's own rule with all those controls moved at once; null: it does not.</summary>
    public static TimeSpan? WaitsToWork(Wiring wiring, Expression works, ImmutableArray<(int Control, int Position)> setting)
    {
        var rule = new Evaluator([works]);
        var (_, memory) = rule.Step(Memory.Fresh, _ => false, name => Find(wiring, name)?.Rest ?? "");
        var waited = TimeSpan.Zero;
        for (var timers = 0; timers <= MostTimers; timers++)
        {
            (var levels, memory) = rule.Step(memory, Away, PositionOf);
            if (levels[0].On)
            {
                return waited;
            }

            if (Evaluator.NextTimer(memory) is not { } next)
            {
                return null;
            }

            waited += next;
            memory = Evaluator.Advance(memory, next);
        }

        return null;

        bool Away(string name) => setting.Any(s => Names.Same(wiring.Controls[s.Control].Name, name));

        string PositionOf(string name)
        {
            foreach (var (c, p) in setting)
            {
                if (Names.Same(wiring.Controls[c].Name, name))
                {
                    return wiring.Controls[c].Positions[p];
                }
            }

            return Find(wiring, name)?.Rest ?? "";
        }
    }

    // What stays put goes first, as a hand would do it: the key before the button.
    private static Settled Play(Wiring wiring, ImmutableArray<(int Control, int Position)> setting, TimeSpan wait)
    {
        var settler = new Settler(wiring);
        var settled = settler.Settle(wiring.Start());
        foreach (var (c, p) in setting.OrderBy(s => wiring.Controls[s.Control].Momentary))
        {
            settled = settler.Settle(Time.Moved(settled.State, c, p));
        }

        return wait > TimeSpan.Zero ? Time.Pass(settler, settled, wait).Last().Settled : settled;
    }

    private static Control? Find(Wiring wiring, string name) => wiring.Controls.FirstOrDefault(c => Names.Same(c.Name, name));
}

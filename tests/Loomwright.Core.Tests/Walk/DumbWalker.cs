using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Tests.Walk;

/// <summary>
/// The same walk by plain means: one state after another, each settled by a fresh settler that keeps nothing, with real
/// time (a millisecond for each move of a hand) and states told apart as text.
/// </summary>
internal sealed class DumbWalker
{
    private static readonly TimeSpan HandMove = TimeSpan.FromMilliseconds(1);

    private readonly Loom _loom;
    private readonly Wiring _wiring;
    private readonly FullLight _fullLight;
    private readonly ImmutableArray<Evaluator> _rules;

    private DumbWalker(Loom loom)
    {
        _loom = loom;
        _wiring = Wiring.Of(loom);
        _fullLight = FullLight.Of(loom);
        _rules = [.. loom.Functions.Select(f => new Evaluator([f.Works]))];
    }

    /// <summary>Signatures of all states; surprises as <c>kind function</c> with the fewest operations to each.</summary>
    public static (HashSet<string> States, SortedDictionary<string, int> Surprises) Walk(Loom loom) => new DumbWalker(loom).Walk();

    private (HashSet<string>, SortedDictionary<string, int>) Walk()
    {
        var states = new HashSet<string>(StringComparer.Ordinal);
        var surprises = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var waiting = new PriorityQueue<(State State, Memory[] Memories), (int Length, int Order)>();
        var order = 0;
        foreach (var start in Starts(0))
        {
            waiting.Enqueue((_wiring.Start() with { Positions = new Row<int>([.. start]) }, [.. _rules.Select(_ => Memory.Fresh)]), (Away(start), order++));
        }

        while (waiting.TryDequeue(out var next, out var place))
        {
            var settler = new Settler(_wiring);
            var settled = settler.Settle(next.State);
            var memories = Look(next.Memories, settled.State);
            foreach (var surprise in Wrong(settled, memories, new Watching(_wiring, settler, _fullLight)))
            {
                surprises.TryAdd(surprise, place.Length);
            }

            if (Ends(settled) || !states.Add(Signature(settled.State, memories)))
            {
                continue;
            }

            foreach (var (control, to) in Steps(settled.State, memories))
            {
                waiting.Enqueue(After(settled.State, memories, control, to), (place.Length + 1, order++));
            }
        }

        return (states, surprises);
    }

    // Not yet settled: time has passed, and then the control was moved.
    private static (State, Memory[]) After(State state, Memory[] memories, int control, int to)
    {
        var time = control < 0 ? Left(state, memories)!.Value : HandMove;
        var later = state with { Boxes = new Row<BoxState>([.. state.Boxes.AsSpan().ToArray().Select(b => b with { Memory = Evaluator.Advance(b.Memory, time) })]) };
        return (control < 0 ? later : Time.Moved(later, control, to), [.. memories.Select(m => Evaluator.Advance(m, time))]);
    }

    /// <summary>All that tells two states apart, but for how much of a running time is left.</summary>
    public static string Signature(State state, IEnumerable<Memory> memories)
    {
        var boxes = string.Join(" | ", state.Boxes.AsSpan().ToArray().Select(b => $"{b.Alive} {b.Awake} {All(b.Inputs)} {All(b.Commands)} {All(b.Tripped)} {Told(b.Memory)}"));
        return $"{All(state.Positions)} | {boxes} | {All(state.Blown)} {All(state.Warm)} {All(state.Relays)} {All(state.Flashers)} | {string.Join(" ; ", memories.Where(m => !m.Cells.IsEmpty).Select(Told))}";
    }

    private static string All<T>(Row<T> row)
        where T : IEquatable<T> => string.Join(",", row.AsSpan().ToArray());

    private static string Told(Memory memory) => string.Join(",", memory.Cells.Select(c => $"{(c.Was ? "w" : "")}{(c.Set ? "s" : "")}{(c.Left is null ? "" : "t")}"));

    private IEnumerable<int[]> Starts(int control)
    {
        if (control == _wiring.Controls.Length)
        {
            return [[]];
        }

        var facts = _wiring.Controls[control];
        return from position in facts.Momentary ? [Rest(control)] : Enumerable.Range(0, facts.Positions.Length)
               from others in Starts(control + 1)
               select (int[])[position, .. others];
    }

    private int Rest(int control) => Wiring.PlaceOf(_wiring.Controls[control], _wiring.Controls[control].Rest)!.Value;

    private int Away(int[] positions) => positions.Select((p, c) => Math.Abs(p - Rest(c))).Sum();

    private static bool Ends(Settled settled) =>
        settled.Outcome != Outcome.Settled || settled.State.Blown.AsSpan().Contains(true) || settled.State.Boxes.AsSpan().ToArray().Any(b => b.Tripped.AsSpan().Contains(true));

    private static TimeSpan? Left(State state, Memory[] memories) =>
        memories.Concat(state.Boxes.AsSpan().ToArray().Select(b => b.Memory)).Select(Evaluator.NextTimer).Where(t => t is not null).Min();

    private Memory[] Look(Memory[] memories, State state)
    {
        Memory[] next = [.. memories];
        for (var f = 0; f < next.Length; f++)
        {
            for (var look = 0; look < 5; look++)
            {
                next[f] = Step(f, next[f], state).Next;
            }
        }

        return next;
    }

    private (ImmutableArray<Level> Levels, Memory Next) Step(int function, Memory memory, State state)
    {
        return _rules[function].Step(memory, name => Position(name) is var (c, p) && p != Rest(c), name => Position(name) is var (c, p) ? _wiring.Controls[c].Positions[p] : "");

        (int, int) Position(string name)
        {
            var c = _wiring.Controls.ToList().FindIndex(c => Names.Same(c.Name, name));
            return (c, state.Positions[c]);
        }
    }

    private IEnumerable<(int, int)> Steps(State state, Memory[] memories)
    {
        for (var c = 0; c < _wiring.Controls.Length; c++)
        {
            var held = Enumerable.Range(0, _wiring.Controls.Length).Count(o => o != c && _wiring.Controls[o].Momentary && state.Positions[o] != Rest(o));
            foreach (var to in new[] { state.Positions[c] - 1, state.Positions[c] + 1 })
            {
                if (to >= 0 && to < _wiring.Controls[c].Positions.Length && (!_wiring.Controls[c].Momentary || held < 2))
                {
                    yield return (c, to);
                }
            }
        }

        if (Left(state, memories) is not null)
        {
            yield return (-1, 0);
        }
    }

    private IEnumerable<string> Wrong(Settled settled, Memory[] memories, Watching watching)
    {
        if (settled.Outcome != Outcome.Settled)
        {
            return [$"{settled.Outcome} {string.Join(" and ", _wiring.Boxes.Select(b => b.Part))}"];
        }

        if (Ends(settled))
        {
            var fuses = _wiring.Fuses.Where((_, f) => settled.State.Blown[f]).Select(f => f.Part).ToList();
            return [fuses.Count > 0 ? $"FuseBlows {string.Join(" and ", fuses)}" : "OutputTrips"];
        }

        var working = _loom.Functions.Where((_, f) => Step(f, memories[f], settled.State).Levels[0].On).ToList();
        return watching.Seen(settled).Select(seen => Wrong(seen, working)).OfType<string>();
    }

    private string? Wrong(Seen seen, List<Function> working)
    {
        var word = seen.Symbol.ToString().ToLowerInvariant();
        var rest = seen.LightShare is not null ? "dark" : seen.Symbol is Symbol.Sounds or Symbol.Silent ? "silent" : "rests";
        var promised = working.SelectMany(f => f.Shows.Where(s => Of(s, seen)).Select(s => (f.Name, s.Symbol))).ToList();
        var expected = promised.Count == 0 ? [rest] : promised.Select(p => p.Symbol).ToList();
        if (expected.Contains(word) || working.Any(f => f.May.Any(s => Of(s, seen) && s.Symbol == word)))
        {
            return null;
        }

        var kind = promised.Count == 0 ? "NotAskedFor" : word == rest ? "ShowsNothing" : word == "dim" ? "Dimmed" : "ShowsOtherwise";
        var function = promised.Count > 0 ? promised[0].Name : _loom.Functions.FirstOrDefault(f => f.Shows.Any(s => Of(s, seen)))?.Name;
        return $"{kind} {function ?? seen.Name}";
    }

    private static bool Of(Show show, Seen seen) => Names.Same(show.What, seen.Name) || Names.Same(show.What, seen.Part) || (show.What == "all lamps" && seen.LightShare is not null);
}

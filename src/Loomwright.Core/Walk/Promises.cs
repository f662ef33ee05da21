using System.Collections.Concurrent;
using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Walk;

/// <summary>What each function promises, followed by its own rule with its own memory, in step with the bike; for any number of threads.</summary>
internal sealed class Promises
{
    // A rule looks again until it remembers nothing new: a press is over at the second look.
    private const int MostLooks = 8;

    private readonly ImmutableArray<Promise> _promises;
    private readonly ImmutableArray<(Evaluator Rule, string Function)> _remembering;

    public Promises(Wiring wiring, ImmutableArray<Function> functions)
    {
        Functions = functions;
        var slots = 0;
        var promises = ImmutableArray.CreateBuilder<Promise>(functions.Length);
        foreach (var function in functions)
        {
            var promise = new Promise(wiring, function.Works, slots);
            slots += promise.Remembers ? 1 : 0;
            promises.Add(promise);
        }

        _promises = promises.ToImmutable();
        _remembering = [.. _promises.Zip(functions).Where(p => p.First.Remembers).Select(p => (p.First.Rule, p.Second.Name))];
        Fresh = Row.Of(slots, Memory.Fresh);
    }

    public ImmutableArray<Function> Functions { get; }

    /// <summary>Nothing seen yet: one place for each function that remembers.</summary>
    public Row<Memory> Fresh { get; }

    /// <summary>The rule behind a place of the memories, and its function's name.</summary>
    public (Evaluator Rule, string Function) At(int slot) => _remembering[slot];

    /// <summary>What is remembered after a control was moved, or after a time ran out (−1).</summary>
    public Row<Memory> After(Row<Memory> before, Setting setting, int moved)
    {
        foreach (var promise in _promises)
        {
            if (!promise.Remembers || (moved >= 0 && !promise.Controls.Contains(moved)))
            {
                continue;
            }

            var memory = before[promise.Slot];
            for (var look = 0; look < MostLooks; look++)
            {
                var next = promise.Look(memory, setting).Next;
                if (next.Equals(memory))
                {
                    break;
                }

                memory = next;
            }

            before = before.With(promise.Slot, memory);
        }

        return before;
    }

    /// <summary>Whether a function works.</summary>
    public bool Works(int function, Row<Memory> memories, Setting setting) =>
        _promises[function] is var promise && promise.Look(promise.Remembers ? memories[promise.Slot] : Memory.Fresh, setting).Works;

    private sealed class Promise
    {
        private readonly Wiring _wiring;
        private readonly Dictionary<string, int> _controlOf = new(StringComparer.Ordinal);
        private readonly ConcurrentDictionary<(Memory, long), (bool Works, Memory Next)> _looks = new();

        public Promise(Wiring wiring, Expression works, int slot)
        {
            _wiring = wiring;
            Slot = slot;
            Rule = new Evaluator([works]);
            foreach (var name in works.NamesUsed())
            {
                _controlOf[name] = wiring.Controls.ToList().FindIndex(c => Names.Same(c.Name, name));
            }

            Controls = [.. _controlOf.Values.Where(c => c >= 0).Distinct()];
            Remembers = !Rule.Step(Memory.Fresh, static _ => false, static _ => "").Next.Equals(Memory.Fresh);
        }

        public Evaluator Rule { get; }

        public int Slot { get; }

        public bool Remembers { get; }

        /// <summary>Places of the controls it names.</summary>
        public ImmutableArray<int> Controls { get; }

        /// <summary>One look at the controls; worked out once for each memory and setting of the controls it names.</summary>
        public (bool Works, Memory Next) Look(Memory memory, Setting setting)
        {
            var place = 0L;
            foreach (var c in Controls)
            {
                place = (place * _wiring.Controls[c].Positions.Length) + setting.Positions[c];
            }

            if (!_looks.TryGetValue((memory, place), out var look))
            {
                var (levels, next) = Rule.Step(memory, name => Control(name) is { } c && !Names.Same(c.Positions[Position(name)], c.Rest), name => Control(name)?.Positions[Position(name)] ?? "");
                _looks[(memory, place)] = look = (levels[0].On, next);
            }

            return look;

            Control? Control(string name) => _controlOf[name] is >= 0 and var c ? _wiring.Controls[c] : null;

            int Position(string name) => setting.Positions[_controlOf[name]];
        }
    }
}

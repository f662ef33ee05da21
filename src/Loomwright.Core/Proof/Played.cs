using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>Everything a stage does with power on, on one wiring: moment 0 is power connected, then one moment an operation.</summary>
internal sealed class Played
{
    private readonly ImmutableArray<Operation> _operations;
    private readonly ImmutableArray<int> _momentOf;
    private readonly ILookup<int, Picture?> _metered;

    public Played(Loom loom, ImmutableArray<Step> steps)
    {
        Wiring = Wiring.Of(loom);
        Steps = [.. steps.Where(s => s.PowerOn)];
        var operations = ImmutableArray.CreateBuilder<Operation>();
        var moments = ImmutableArray.CreateBuilder<int>();
        foreach (var step in Steps)
        {
            Operation? operation = step.Do is { } set ? set : step.Wait is { } wait ? new Operation.Wait(wait) : null;
            if (operation is not null)
            {
                operations.Add(operation);
            }

            moments.Add(operations.Count);
        }

        (_operations, _momentOf) = (operations.ToImmutable(), moments.ToImmutable());
        Healthy = [.. From(new Settler(Wiring), null, 0)];
        _metered = Steps.Select((s, i) => (Step: s, Moment: _momentOf[i])).Where(s => s.Step.Meter is { Dial: Dial.Volts })
            .ToLookup(s => s.Moment, s => Meter.VoltsFlow(Wiring, Healthy[s.Moment].State, s.Step.Meter!.RedTip.Terminal, s.Step.Meter.BlackTip.Terminal));
    }

    public Wiring Wiring { get; }

    /// <summary>The powered steps.</summary>
    public ImmutableArray<Step> Steps { get; }

    /// <summary>Each moment without a fault.</summary>
    public ImmutableArray<Settled> Healthy { get; }

    /// <summary>What was last done before a moment: the operation's step, or power connected.</summary>
    public Step StepAt(int moment) => Steps[Math.Max(0, _momentOf.IndexOf(moment))];

    /// <summary>The moment with which the operations of an act begin; past the last when it has none.</summary>
    public int BeginOf(Act act)
    {
        for (var s = 0; s < Steps.Length; s++)
        {
            if (Steps[s].Act == act && (Steps[s].Do is not null || Steps[s].Wait is not null))
            {
                return _momentOf[s];
            }
        }

        return Healthy.Length;
    }

    /// <summary>The moment a step of <see cref="Steps"/> looks at.</summary>
    public int MomentOf(int step) => _momentOf[step];

    /// <summary>The moments in which a fault makes any difference, each with how it settles, in order.</summary>
    /// <param name="touch">The fault.</param>
    /// <param name="before">Ends there; null: at the last moment.</param>
    public IEnumerable<(int Moment, Settled With, Settler Settler)> Differing(Touch touch, int? before = null)
    {
        if (!touch.Exists)
        {
            yield break;
        }

        Settler? settler = null;
        Settled? own = null;
        for (var m = 0; m < (before ?? Healthy.Length); m++)
        {
            if (own is null && !touch.Matters(Healthy[m]) && !_metered[m].Any(p => p is null || touch.Matters(Healthy[m].State, p)))
            {
                continue;
            }

            settler ??= new Settler(touch.Wiring);
            own = m == 0 ? settler.Settle(touch.Wiring.Start()) : After(settler, own ?? Healthy[m - 1], _operations[m - 1]);
            yield return (m, own, settler);

            // Equal states behave alike: from here on only the circuit differs.
            own = !touch.IsWhole && own.Outcome == Healthy[m].Outcome && own.State == Healthy[m].State ? null : own;
        }
    }

    private IEnumerable<Settled> From(Settler settler, Settled? before, int moment)
    {
        var now = before ?? settler.Settle(Wiring.Start());
        yield return now;
        foreach (var operation in _operations.Skip(moment))
        {
            yield return now = After(settler, now, operation);
        }
    }

    private Settled After(Settler settler, Settled before, Operation operation) => operation switch
    {
        Operation.Set set => settler.Settle(Moved(before.State, set)),
        Operation.Wait wait => Time.Pass(settler, before, wait.Time).Last().Settled,
        _ => throw new InvalidOperationException("an operation no step asks for"),
    };

    private State Moved(State state, Operation.Set set)
    {
        for (var c = 0; c < Wiring.Controls.Length; c++)
        {
            if (Names.Same(Wiring.Controls[c].Name, set.Control))
            {
                return Time.Moved(state, c, Wiring.PlaceOf(Wiring.Controls[c], set.Position)!.Value);
            }
        }

        throw new InvalidOperationException($"{set.Control} is not connected");
    }
}

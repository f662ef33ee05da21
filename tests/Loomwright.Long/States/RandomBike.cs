using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Oracle;
using Loomwright.Simulation;

namespace Loomwright.Long.States;

/// <summary>A machine brought from seeds into states that nobody thought of, with at most one thing wrong.</summary>
internal sealed class RandomBike(string name, Loom loom)
{
    /// <summary>States of one seed: power connected with the controls anyhow, then one operation after another.</summary>
    public const int StatesOfASeed = 10;

    private const double WithoutFault = 0.1;
    private const double Waits = 0.15;
    private readonly Wiring _healthy = Wiring.Of(loom);
    private readonly ImmutableArray<Fault> _faults = Catalogue.Of(loom);

    public string Name { get; } = name;

    /// <summary>How many single faults are listed.</summary>
    public int Faults => _faults.Length;

    /// <summary>The states of a seed, in order; the same on every machine.</summary>
    public IEnumerable<RandomState> Of(ulong seed)
    {
        var dice = new Dice(seed);
        var fault = dice.Chance(WithoutFault) ? null : _faults[dice.Below(_faults.Length)];
        var wiring = fault is null ? _healthy : _healthy.With(fault);
        var settler = new Settler(wiring);
        var start = wiring.Start() with { Positions = new Row<int>([.. wiring.Controls.Select(c => dice.Below(c.Positions.Length))]) };
        var settled = settler.Settle(start);
        yield return State();
        for (var s = 1; s < StatesOfASeed; s++)
        {
            settled = Operated();
            yield return State();
        }

        RandomState State() => new(Name, seed, fault, wiring, settler, settled);

        Settled Operated()
        {
            if (dice.Chance(Waits))
            {
                return Time.Pass(settler, settled, TimeSpan.FromSeconds(Math.Round(dice.Spread(0.1, 60), 1))).Last().Settled;
            }

            var control = dice.Below(wiring.Controls.Length);
            return settler.Settle(Time.Moved(settled.State, control, dice.Below(wiring.Controls[control].Positions.Length)));
        }
    }
}

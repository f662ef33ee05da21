using System.Collections.Immutable;

namespace Loomwright.Simulation;

/// <summary>An input of a box, by place.</summary>
internal readonly record struct InputPlace(int Box, int Input);

/// <summary>The order in which what has changed takes effect.</summary>
internal enum Order
{
    /// <summary>All boxes and inputs at once.</summary>
    Together,

    /// <summary>One input at a time, the first in file order first.</summary>
    FirstFirst,

    /// <summary>One input at a time, the last in file order first.</summary>
    LastFirst,
}

/// <summary>What a box can tell of the bike: whether it has supply, and its inputs.</summary>
internal static class Reading
{
    public static double SupplyVolts(Box box, double[] volts) => volts[box.SupplyNode] - volts[box.GroundNode];

    public static bool Alive(Box box, double[] volts) => SupplyVolts(box, volts) >= box.Facts.ResetsBelowVolts;

    public static double InputVolts(Box box, int input, double[] volts) => volts[box.InputNodes[input]] - volts[box.GroundNode];

    /// <summary>Whether the input is active; null between its two thresholds.</summary>
    public static bool? Active(Box box, int input, double[] volts)
    {
        var at = InputVolts(box, input, volts);
        var facts = box.Facts.Inputs[input];
        return at < facts.LowVolts ? facts.ActiveAtGround : at > facts.HighVolts ? !facts.ActiveAtGround : null;
    }

    /// <summary>Every input of a box that has supply; one that cannot be told is read as <paramref name="readAs"/> says, or reported.</summary>
    public static (Row<bool> Inputs, InputPlace? Undecided) Inputs(Box box, int place, double[] volts, ImmutableDictionary<InputPlace, bool> readAs)
    {
        var inputs = ImmutableArray.CreateBuilder<bool>(box.InputNodes.Length);
        for (var i = 0; i < box.InputNodes.Length; i++)
        {
            if (Active(box, i, volts) is { } active)
            {
                inputs.Add(active);
            }
            else if (readAs.TryGetValue(new InputPlace(place, i), out var taken))
            {
                inputs.Add(taken);
            }
            else
            {
                return (default, new InputPlace(place, i));
            }
        }

        return (new Row<bool>(inputs.MoveToImmutable()), null);
    }
}

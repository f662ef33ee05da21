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

    // A fifth either way (judgement): a ladder's next button is nearly twice as far.
    private const double LadderTolerance = 1.2;

    /// <summary>Whether the input is active; null between its two thresholds.</summary>
    public static bool? Active(Wiring wiring, InputPlace place, State state, double[] volts, DataLeads leads)
    {
        var box = wiring.Boxes[place.Box];
        var facts = box.Facts.Inputs[place.Input];
        if (facts.Button is { } button)
        {
            return button.LadderOhms is { } ohms ? IsPressed(box, ohms, volts) : leads.Pressed(place.Box, button.Number, state, volts);
        }

        var at = InputVolts(box, place.Input, volts);
        return at < facts.LowVolts ? facts.ActiveAtGround : at > facts.HighVolts ? !facts.ActiveAtGround : null;
    }

    /// <summary>Every input of a box that has supply; one that cannot be told is read as <paramref name="readAs"/> says, or reported.</summary>
    public static (Row<bool> Inputs, InputPlace? Undecided) Inputs(Wiring wiring, int place, State state, double[] volts, DataLeads leads, ImmutableDictionary<InputPlace, bool> readAs)
    {
        var box = wiring.Boxes[place];
        var inputs = state.Boxes[place].Inputs;
        for (var i = 0; i < box.InputNodes.Length; i++)
        {
            if (Active(wiring, new InputPlace(place, i), state, volts, leads) is { } active)
            {
                inputs = inputs.With(i, active);
            }
            else if (readAs.TryGetValue(new InputPlace(place, i), out var taken))
            {
                inputs = inputs.With(i, taken);
            }
            else
            {
                return (default, new InputPlace(place, i));
            }
        }

        return (inputs, null);
    }

    // From the share of its own supply that the box finds on the data lead it knows the ohms to ground.
    private static bool IsPressed(Box box, double ohms, double[] volts)
    {
        var share = (volts[box.Data.First] - volts[box.GroundNode]) / SupplyVolts(box, volts);
        if (share is <= 0 or >= 1)
        {
            return false;
        }

        var found = box.Facts.Data!.PullOhms * share / (1 - share);
        return found > ohms / LadderTolerance && found < ohms * LadderTolerance;
    }
}

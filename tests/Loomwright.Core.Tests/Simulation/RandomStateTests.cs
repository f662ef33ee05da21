using Loomwright.Long.States;
using Loomwright.Oracle;
using Loomwright.Simulation;

namespace Loomwright.Tests.Simulation;

/// <summary>The two whole examples in random states with single faults; 100,000 of them in <c>./long states</c>.</summary>
public sealed class RandomStateTests
{
    private const int States = 300;

    [Fact]
    public void However_the_controls_stand_and_whatever_one_thing_is_wrong_the_bike_is_solved_as_a_general_simulator_does()
    {
        var tallies = Visits.Of(1, States, comparedOf: 2, Repository.Read);

        Assert.Equal([], tallies.SelectMany(t => t.Wrong));
        Assert.Equal(States, tallies.Sum(t => t.States));
        Assert.All(tallies, t => Assert.InRange(t.LargestResidualAmps, 0, Tally.AllowedAmps));
        Assert.All(tallies, t => Assert.InRange(t.Faults, 10, t.Bike.Faults));
        Assert.InRange(tallies.Sum(t => t.Compared), 12, 20);
        if (Ngspice.IsInstalled)
        {
            Assert.InRange(tallies.Sum(t => t.Circuits.Count(c => !c.SimulatorValid)), 0, 1);
        }
        else
        {
            TestContext.Current.AddWarning("libngspice0 is not installed: only exact fractions and residuals were checked");
        }
    }

    [Fact]
    public void A_current_that_does_not_add_up_and_a_picture_of_other_volts_are_both_noticed()
    {
        var state = new RandomBike("sandpiper", Examples.Read("examples/sandpiper/sandpiper.loom.yaml")).Of(1).Last();
        var picture = state.Settled.Pictures[0];
        var leaking = picture with { Amps = [.. picture.Amps.Select((a, l) => l == 0 ? a + (2 * Tally.AllowedAmps) : a)] };
        var lifted = picture with { Volts = [.. picture.Volts.Select((v, n) => n == 1 ? v + 1e-4 : v)] };

        Assert.Empty(Wrong(state));
        Assert.Single(Wrong(With(leaking)));
        Assert.Single(Wrong(With(lifted)));

        RandomState With(Picture other) => state with { Settled = state.Settled with { Pictures = state.Settled.Pictures.SetItem(0, other) } };
    }

    private static List<string> Wrong(RandomState state)
    {
        var tally = new Tally(new RandomBike("sandpiper", state.Wiring.Loom));
        tally.Add(state, compare: true);
        return tally.Wrong;
    }
}

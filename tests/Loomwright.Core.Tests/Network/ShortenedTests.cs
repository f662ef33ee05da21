using Loomwright.Network;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Tests.Network;

public sealed class ShortenedTests
{
    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    public void With_its_rows_of_wires_put_together_a_loom_settles_to_the_same_volts_and_amps(string bike)
    {
        var wiring = Wiring.Of(Examples.Read($"examples/{bike}/{bike}.loom.yaml"));
        var solved = new Solved(wiring);
        var (whole, shortened) = (new Settler(wiring), new Settler(wiring, coldStart: true, solved));
        var random = new Random(7);
        for (var i = 0; i < 12; i++)
        {
            var start = wiring.Start() with { Positions = new Row<int>([.. wiring.Controls.Select(c => random.Next(c.Positions.Length))]) };
            var (expected, seen) = (whole.Settle(start), shortened.Settle(start));

            Assert.Equal(expected.State, seen.State);
            foreach (var (one, other) in expected.Pictures.Zip(seen.Pictures))
            {
                Assert.All(solved.Nodes, n => Assert.Equal(one.Volts[n], other.Volts[n], 1e-8));
                Assert.All(wiring.Sights, s => Assert.Equal(one.Amps[s.Link], other.Amps[s.Link], 1e-8));
            }
        }
    }

    [Fact]
    public void Two_wires_in_a_row_are_one_and_a_wire_that_leads_nowhere_is_none()
    {
        var shortened = Of(5, [], new(1, 0, new Source(12, 0.1)), new(1, 2, new Ohms(1)), new(2, 3, new Ohms(2)), new(3, 0, new Ohms(3)), new(2, 4, new Ohms(4)));

        Assert.Equal([0, 1, -1, -1, -1], shortened.NodeOf);
        Assert.Equal([new(1, 0, new Source(12, 0.1)), new Branch(1, 0, new Ohms(6))], shortened.Circuit.Branches, (a, b) => a.Curve == b.Curve);
    }

    [Fact]
    public void Where_volts_are_asked_for_between_two_wires_they_stay_two()
    {
        var shortened = Of(3, [2], new(1, 0, new Source(12, 0.1)), new(1, 2, new Ohms(1)), new(2, 0, new Ohms(2)));

        Assert.Equal([0, 1, 2], shortened.NodeOf);
        Assert.Equal([0, 1, 2], shortened.BranchOf);
    }

    [Fact]
    public void Where_a_part_hangs_on_nothing_everything_stays()
    {
        var shortened = Of(5, [], new(1, 0, new Source(12, 0.1)), new(1, 2, new Ohms(1)), new(2, 0, new Ohms(2)), new(3, 4, new Ohms(1)), new(4, 0, new Open()));

        Assert.Equal([0, 1, 2, 3, 4], shortened.NodeOf);
    }

    private static Shortened Of(int nodes, int[] asked, params Branch[] branches) => new(new Circuit(nodes, [.. branches]), asked, []);
}

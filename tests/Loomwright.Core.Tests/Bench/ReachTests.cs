using Loomwright.Bench;
using Loomwright.Simulation;

namespace Loomwright.Tests.Bench;

public sealed class ReachTests
{
    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    [InlineData("turnstone")]
    public void Everything_that_lights_sounds_or_turns_is_brought_on_whether_relays_or_data_leads_lie_on_the_way(string bike) =>
        Assert.Empty(new Survey(Examples.Read($"examples/{bike}/{bike}.loom.yaml")).NeverOn);

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    public void What_a_stage_is_about_works_with_nothing_connected_but_that_stage_and_those_before(string bike)
    {
        var loom = Examples.Read($"examples/{bike}/{bike}.loom.yaml");
        foreach (var line in new Survey(loom).Loads)
        {
            var rig = new Rig(Connected.Of(loom, line.Reach));
            Assert.Contains(rig.Play(line.Do)[^1].Seen, s => s.Name == line.Loads[0] && s.Symbol is not (Symbol.Dark or Symbol.Silent or Symbol.Rests));
        }
    }
}

using Loomwright.Bench;

namespace Loomwright.Tests.Bench;

public class EngineOnTheBenchTests
{
    [Fact]
    public void A_contact_that_the_running_engine_works_is_played_by_its_lead_since_no_engine_runs_on_the_bench()
    {
        var moved = Plans.OnTheBench(Plans.Bike("kittiwake")).Stages.SelectMany(s => s.Steps).Where(s => s.Do?.Control == "engine").ToList();
        Assert.Contains(moved, s => s.Text.StartsWith("For the engine at idle, which itself stays still: take the lead off oil switch 1.", StringComparison.Ordinal));
        Assert.Contains(moved, s => s.Text.StartsWith("For the engine at stopped, which itself stays still: put the lead on oil switch 1.", StringComparison.Ordinal));
        Assert.All(moved.Where(s => s.Meter?.Dial == Dial.Ohms), s => Assert.Equal("the wire for ", s.Meter!.RedTip.Instead));
    }
}

using Loomwright.Simulation;
using Loomwright.Text;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Simulation;

/// <summary>A 55 W filament on a 5 A supply, from the file a builder would write.</summary>
public sealed class ColdStartTests
{
    private const string OnTheSupply = "    kind: bench supply\n    volts: 13 V\n    limit: 5 A\n";
    private const string OnTheBattery = "    kind: battery\n    chemistry: agm\n    capacity: 10 Ah\n";

    private static readonly string Text = Repository.Read("examples/cold-start/cold-start.loom.yaml").ReplaceLineEndings("\n");

    [Fact]
    public void On_a_supply_of_5_amps_the_box_resets_again_and_again_and_the_frame_says_for_which_lamp()
    {
        var frame = Pressed(Read(Text).Start());
        Assert.Equal(Outcome.SwitchesByItself, frame.Outcome);
        Assert.Equal(["box resets again and again: the supply is too small for work lamp"], frame.Events);
        Assert.Equal(Symbol.Dark, frame.Symbol("work lamp"));
        Assert.False(frame.Controllers.Single().Awake);
    }

    [Fact]
    public void Cold_the_lamp_holds_the_supply_at_its_limit_and_near_one_volt()
    {
        // Check value by hand: 5 A through 12²/(14·55) = 0.19 Ω and the leads.
        var cold = Pressed(Read(Text).Start());
        Assert.Equal(5, cold.Phases[0].Supply.Amps, 0.1);
        Assert.InRange(cold.Volts("work lamp.+") - cold.Volts("work lamp.-"), 0.8, 1.1);
        Assert.True(cold.Volts("box.B+") < 7.5);
    }

    [Fact]
    public void Letting_the_button_go_ends_it_and_the_box_is_awake_again()
    {
        var rig = Read(Text).Start();
        Pressed(rig);
        var after = rig.Do(Set("lamp button", "released"));
        Assert.Equal(Outcome.Settled, after.Outcome);
        Assert.True(after.Controllers.Single().Awake);
    }

    [Fact]
    public void With_the_battery_in_place_of_the_supply_the_same_lamp_is_lit()
    {
        var frame = Pressed(Read(Text.Replace(OnTheSupply, OnTheBattery, StringComparison.Ordinal)).Start());
        Assert.Equal(Outcome.Settled, frame.Outcome);
        Assert.Equal(Symbol.Lit, frame.Symbol("work lamp"));
        Assert.Empty(frame.Events);
    }

    [Fact]
    public void With_the_first_milliseconds_left_out_the_supply_would_seem_to_do()
    {
        var frame = Pressed(new Rig(Read(Text).Loom!, new RigOptions { ColdStart = false }));
        Assert.Equal(Outcome.Settled, frame.Outcome);
        Assert.Equal(Symbol.Lit, frame.Symbol("work lamp"));
    }

    [Theory]
    [InlineData("5 A", Outcome.SwitchesByItself)]
    [InlineData("30 A", Outcome.SwitchesByItself)]
    [InlineData("60 A", Outcome.Settled)]
    public void Only_a_supply_of_many_times_the_lamps_current_starts_it(string limit, Outcome outcome)
    {
        // Cold it takes 7.5 V / 0.19 Ω, about 39 A, to keep the box alive.
        var frame = Pressed(Read(Text.Replace("limit: 5 A", "limit: " + limit, StringComparison.Ordinal)).Start());
        Assert.Equal(outcome, frame.Outcome);
    }

    private static Bike Read(string text)
    {
        var bike = Bike.Read(new SourceText("cold-start", text));
        Assert.True(bike.IsComplete);
        return bike;
    }

    private static Frame Pressed(Rig rig) => rig.Play([Set("lock", "riding"), Set("lamp button", "pressed")])[^1];
}

using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Parts;
using static Loomwright.Tests.Parts.Given;

namespace Loomwright.Tests.Parts;

public sealed class LoadControllerTests
{
    [Fact]
    public void A_box_as_its_manual_describes_it_has_its_terminals_in_the_order_of_the_case()
    {
        var box = Box();
        Assert.Empty(box.Problems);
        Assert.Equal("B+ B- X1 X2 X3 X4 X5", string.Join(' ', box.Terminals.Select(t => t.Mark)));
        Assert.Equal(new Terminal("X3", Role.Output, "stop lamp", "X"), box.Terminals.Single(t => t.Mark == "X3"));
        Assert.Equal(new Terminal("X5", Role.Lead, null, "X"), box.Terminals.Single(t => t.Mark == "X5"));
        var controller = box.Controller!;
        Assert.Equal(new Expression.Named("key"), controller.Awake);
        Assert.Equal([new Input("key", "X1", false, 3, 6), new Input("stop", "X2", true, 3, 6)], controller.Inputs);
        Assert.Equal("key", controller.Outputs.Single(o => o.Name == "stop lamp").TripEnds);
        Assert.Equal(TimeSpan.FromMilliseconds(200), controller.Outputs[0].TripsAfter);
        Assert.Equal([new StatusLight("X2", LightMeans.Input), new StatusLight("X3", LightMeans.LoadCurrent)], controller.Lights);
    }

    [Fact]
    public void A_box_asleep_takes_its_standby_current_and_awake_its_awake_current_at_12_volts()
    {
        var box = Box();
        var asleepAmps = box.Elements.Single(e => e.Name == "standby draw").Curve.At(12).Amps;
        Assert.Equal(0.002, asleepAmps, 6);
        Assert.Equal(0.06, asleepAmps + box.Elements.Single(e => e.Gate is Gate.WhileAwake).Curve.At(12).Amps, 6);
    }

    [Fact]
    public void What_leaks_through_an_output_that_is_off_leaves_a_lamp_dark_and_current_fed_in_there_reaches_the_supply()
    {
        var box = Box();
        var leakage = box.Elements.Single(e => e.Name == "stop lamp leakage").Curve.At(12).Amps;
        Assert.InRange(leakage, 1e-6, 1e-4);
        var diode = box.Elements.Single(e => e.Name == "stop lamp body diode");
        Assert.Equal(("X3", "B+"), (diode.From, diode.To));
        Assert.True(diode.Curve.At(1).Amps > 1);
        Assert.DoesNotContain(box.Elements, e => e.Name == "tail lamp body diode");
    }

    [Fact]
    public void A_mark_that_is_not_on_the_case_is_named_with_the_nearest_that_is()
    {
        var problem = Assert.Single(Box(output: Group(("terminal", Word("X44")), ("when", Word("key")))).Problems);
        Assert.Equal(new Problem("outputs/stop lamp/terminal", "there is no X44 among the plugs", "write X4"), problem);
    }

    [Fact]
    public void Two_things_on_one_terminal_are_told_apart() =>
        Assert.Equal(
            new Problem("outputs/stop lamp/terminal", "X1 is key already", "look up in the manual which of the two sits there"),
            Assert.Single(Box(output: Group(("terminal", Word("X1")), ("when", Word("key")))).Problems));

    [Theory]
    [InlineData("key and stp", "stp is not declared here", "did you mean stop?")]
    [InlineData("key is riding", "key has no positions that can be named here", "write key alone: it is true while key is active")]
    [InlineData("key and lock", "lock is not declared here", "declared are key, stop")]
    public void A_rule_names_only_the_inputs_of_its_own_box(string when, string what, string cure) =>
        Assert.Equal(
            new Problem("outputs/stop lamp/when", what, cure),
            Assert.Single(Box(output: Group(("terminal", Word("X3")), ("when", Word(when)))).Problems));

    [Fact]
    public void A_light_that_follows_an_input_sits_at_an_input()
    {
        var problem = Assert.Single(Box(lights: Group(("X3", Word("input")))).Problems);
        Assert.Equal(("lights/X3", "X3 is not an input"), (problem.Path, problem.What));
    }

    internal static Model Box(Value? output = null, Value? lights = null) => Model(
        "load controller",
        ("plugs", Group(("P", Words("B+", "B-")), ("X", Words("X1", "X2", "X3", "X4", "X5")))),
        ("supply", Word("b+")),
        ("ground", Word("B-")),
        ("awake", Word("key")),
        ("inputs", Group(
            ("key", Group(("terminal", Word("X1")), ("active", Word("plus")))),
            ("stop", Group(("terminal", Word("X2")), ("active", Word("ground")))))),
        ("outputs", Group(
            ("stop lamp", output ?? Group(("terminal", Word("X3")), ("when", Word("stop")), ("limit", Si(5)), ("trip ends", Word("key off")))),
            ("tail lamp", Group(("terminal", Word("X4")), ("when", Word("key at 20 %")), ("body diode", Word("none")))))),
        ("lights", lights ?? (output is null ? Group(("X2", Word("input")), ("X3", Word("load current"))) : Group())));
}

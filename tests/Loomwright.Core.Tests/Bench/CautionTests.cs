using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Tests.Bench;

public class CautionTests
{
    private static readonly Plan Kittiwake = Plan.For(Examples.Kittiwake);

    [Fact]
    public void A_lead_acid_battery_is_fetched_with_its_caution() => Assert.Equal("battery", StepWith(Kittiwake, Cautions.LeadAcid).Part);

    [Fact]
    public void A_lithium_battery_is_fetched_with_its_own()
    {
        var lithium = Plan.For(WithBattery(s => s.With("chemistry", new Value.Word("lifepo4"))));
        Assert.Equal("battery", StepWith(lithium, Cautions.Lithium).Part);
        Assert.DoesNotContain(Cautions.LeadAcid, All(lithium));
    }

    [Fact]
    public void A_battery_of_unwritten_chemistry_is_fetched_with_one_line_for_both()
    {
        var unknown = WithBattery(s => new Settings([.. s.Entries.Where(e => e.Key != "chemistry")]));
        Assert.Equal("battery", StepWith(Plan.For(unknown), Cautions.UnknownBattery).Part);
        Assert.DoesNotContain(All(Plan.For(unknown)), c => c is Cautions.LeadAcid or Cautions.Lithium);
        Assert.Contains("does not say what is in it", Cautions.HotBattery(unknown), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lead-acid", "")]
    [InlineData("agm", "")]
    [InlineData("LiFePO4", "Lithium battery hot or swelling")]
    public void Only_a_lithium_battery_is_fled_from_when_hot(string chemistry, string says)
    {
        var hot = Cautions.HotBattery(WithBattery(s => s.With("chemistry", new Value.Word(chemistry))));
        Assert.StartsWith(says, hot, StringComparison.Ordinal);
        Assert.Equal(says.Length == 0, hot.Length == 0);
    }

    [Fact]
    public void A_bench_supply_is_fetched_with_its_own() =>
        Assert.Equal("bench supply", StepWith(Plan.For(Examples.Kittiwake, new PlanOptions { BenchSupplyLimit = new Current(5) }), Cautions.BenchSupply).Part);

    [Fact]
    public void Rings_come_off_and_the_fuse_goes_in_before_the_first_wire()
    {
        var first = Kittiwake.Stages[0].Steps.First(s => s.Act == Act.Connect);
        Assert.Contains(Cautions.Rings, first.Cautions);
        Assert.Contains(Cautions.FuseFirst, first.Cautions);
        Assert.Null(first.Wire);
    }

    [Fact]
    public void The_live_key_lead_is_cautioned_where_it_is_connected()
    {
        var step = StepWith(Kittiwake, Cautions.LiveKey);
        Assert.Equal((Act.Connect, "lock feed"), (step.Act, step.Wire));
    }

    [Fact]
    public void Ohms_are_cautioned_at_the_first_measurement() => Assert.Equal("s0.measure.1", StepWith(Kittiwake, Cautions.OhmsPowerOff).Id);

    [Fact]
    public void First_power_carries_the_rule_of_the_fuse_and_what_to_do_when_hot()
    {
        Assert.StartsWith("Red clip lead on the end of wire battery plus (not the meter's) goes on", StepWith(Kittiwake, Cautions.FirstPower).Text, StringComparison.Ordinal);
        Assert.StartsWith("Red clip lead on the end of wire battery plus (not the meter's) goes on", StepWith(Kittiwake, Cautions.Hot).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Leads_left_free_are_cautioned_where_they_are_capped() => Assert.StartsWith("Cap ", StepWith(Kittiwake, Cautions.BareEnds).Text, StringComparison.Ordinal);

    [Fact]
    public void A_filament_lamp_is_cautioned_when_it_first_lights_and_a_horn_when_it_first_sounds()
    {
        Assert.Equal("left button", StepWith(Kittiwake, Cautions.HotLamp).Do?.Control);
        Assert.Equal("horn button", StepWith(Plan.For(Relays.Lamp), Cautions.Horn).Do?.Control);
    }

    [Fact]
    public void Probing_live_is_cautioned_at_the_first_volts() => Assert.Equal("s0.power-up.1", StepWith(Kittiwake, Cautions.LiveProbe).Id);

    [Fact]
    public void Each_is_said_once_in_a_stage_before_what_it_is_about()
    {
        foreach (var stage in Kittiwake.Stages)
        {
            var said = new HashSet<string>(StringComparer.Ordinal);
            foreach (var step in stage.Steps)
            {
                Assert.All(step.Cautions, c => Assert.True(said.Add(c), $"{step.Id}: {c}"));
                Needs(step.Meter?.Dial == Dial.Ohms, Cautions.OhmsPowerOff);
                Needs(step.Meter?.Dial == Dial.Amps, Cautions.AmpsInLine);
                Needs(step.Meter?.Dial == Dial.Volts, Cautions.LiveProbe);
                Needs(step.PowerOn && step.Meter is null, Cautions.FirstPower);
                Needs(step.PowerOn && step.Meter is null, Cautions.Hot);
                Needs(step.PowerOn && step.Meter is null, Cautions.LastClip);

                void Needs(bool isSo, string caution) => Assert.True(!isSo || said.Contains(caution), $"{step.Id}: {caution}");
            }
        }
    }

    [Fact]
    public void What_cranks_as_designed_is_told_so_and_where_an_engine_is_any_power_may_crank_or_fire_it()
    {
        var bike = Bike.Read(new Loomwright.Text.SourceText("k", Repository.Read("examples/kittiwake/kittiwake.loom.yaml"))).Loom!;
        Operation[] riding = [new Operation.Set("lock", "riding"), new Operation.Set("run switch", "run")];
        Operation[] start = [.. riding, new Operation.Set("thumb start", "pressed")];
        Assert.Equal([Cautions.Cranks, Cautions.MayStart, Cautions.Starter], Cautions.While(bike, start, isOnTheBench: false).Where(c => c is Cautions.Cranks or Cautions.MayStart or Cautions.Starter or Cautions.Stand));
        Assert.Equal(Cautions.Stand, Cautions.While(bike, riding, isOnTheBench: false)[0]);
        Assert.Equal(Cautions.Starter, Cautions.While(bike, start, isOnTheBench: true)[0]);
        Assert.Empty(Cautions.While(Examples.Kittiwake, [], isOnTheBench: false));
    }

    private static Loom WithBattery(Func<Settings, Settings> changed) => Examples.Kittiwake with
    {
        Parts = [.. Examples.Kittiwake.Parts.Select(p => p.Name == "battery" ? p with { Settings = changed(p.Settings) } : p)],
    };

    private static Step StepWith(Plan plan, string caution) => plan.Stages.SelectMany(s => s.Steps).First(s => s.Cautions.Contains(caution));

    private static List<string> All(Plan plan) => [.. plan.Stages.SelectMany(s => s.Steps).SelectMany(s => s.Cautions)];
}

using System.Globalization;
using Loomwright.Quantities;
using Loomwright.Sizing;

namespace Loomwright.Tests.Sizing;

public sealed class HeatTests
{
    private static readonly Surroundings AtFifty = new(new Temperature(50), new Temperature(105));

    [Fact]
    public void A_wire_that_carries_all_its_rule_allows_reaches_its_insulations_class_and_no_more()
    {
        // 2.5 mm², metric practice: 25 A, 50 °C air, 105 °C conductor.
        var heat = Heat.Of(new CrossSection(2.5), AtFifty, AmpacityRules.Usual);
        Assert.Equal(105, heat.Settled(25).Celsius, 1e-9);

        // 02-protection-rules.csv, heat balance with constant R: half the current, a quarter of the rise.
        Assert.Equal(50 + (55 * 0.25), heat.Settled(12.5).Celsius, 1e-9);
    }

    [Fact]
    public void The_careful_estimate_of_the_circular_never_reads_cooler_than_the_heat_balance()
    {
        // 02-protection-rules.csv: FAA par. 11-68, T2 = T1 + (TR − T1)·√(I2/Imax).
        var heat = Heat.Of(new CrossSection(2.5), AtFifty, AmpacityRules.Usual);
        Assert.Equal(50 + (55 * Math.Sqrt(0.5)), Heat.Careful(AtFifty.Ambient, AtFifty.Insulation, 0.5).Celsius, 1e-9);
        Assert.All([0.1, 0.4, 0.7, 1], share => Assert.True(Heat.Careful(AtFifty.Ambient, AtFifty.Insulation, share).Celsius >= heat.Settled(25 * share).Celsius - 1e-9));
    }

    [Fact]
    public void A_wire_warms_63_percent_of_the_way_in_its_time_constant_and_cools_again_when_the_current_ends()
    {
        var heat = Heat.Of(new CrossSection(2.5), AtFifty, AmpacityRules.Usual);
        Assert.Equal(50 + (55 * (1 - Math.Exp(-1))), heat.After(heat.Air, 25, heat.TimeConstantSeconds).Celsius, 1e-9);
        var over = heat.Over([(25, 30), (25, 30), (0, 600)]).Select(t => t.Celsius).ToList();
        Assert.Equal(heat.After(heat.Air, 25, 60).Celsius, over[1], 1e-9);
        Assert.Equal(50, over[2], 0.1);
    }

    [Fact]
    public void In_the_first_moment_a_wire_keeps_all_its_heat()
    {
        // I²·R·t over the heat its copper takes up: 2.5 mm², 250 A, 0.01 s, R at 105 °C, 3.45 J/(K·m·mm²).
        var heat = Heat.Of(new CrossSection(2.5), AtFifty, AmpacityRules.Usual);
        var ohms = 0.0076 * (1 + (0.00393 * 85));
        var rise = 250 * 250 * ohms * 0.01 / (3.45 * 17.241 / 7.6);
        Assert.Equal(rise, heat.After(heat.Air, 250, 0.01).Celsius - 50, 0.01 * rise);
    }

    [Theory]
    [InlineData("MIL-W-5088B single", "metric practice")]
    [InlineData("33 CFR 183.425", "33 CFR 183.425")]
    public void Where_the_rule_chosen_names_no_air_the_heat_is_told_by_another_that_does_and_is_named(string chosen, string by) =>
        Assert.Equal(by, Heat.Of(new CrossSection(2.5), AtFifty, AmpacityRules.Find(chosen)!).By);

    [Fact]
    public void A_size_no_table_lists_is_taken_as_a_wire_in_free_air_and_says_so()
    {
        var heat = Heat.Of(new CrossSection(0.35), AtFifty, AmpacityRules.Usual);
        Assert.Equal("FAA AC 43.13-1B, free air", heat.By);
        Assert.Equal(100, heat.Settled(FreeAir.Amps(0.35, 50)).Celsius, 1e-9);
    }

    [Fact]
    public void The_pages_say_what_the_models_give()
    {
        var heat = Heat.Of(new CrossSection(2.5), AtFifty, AmpacityRules.Usual);
        var cool = new Surroundings(new Temperature(20), new Temperature(105));
        string Fuse(string rule) => AmpacityRules.Find(rule)!.For(new CrossSection(2.5), cool)!.Fuse.Printed;
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{heat.Settled(12.5).Celsius:0.0} °C at 12.5 A, τ = {heat.TimeConstantSeconds:0} s"), Pages.Read("docs/models/wire-heat.md"), StringComparison.Ordinal);
        var page = Pages.Read("docs/models/ampacity.md");
        Assert.Contains($"{Fuse("metric practice")} by metric practice", page, StringComparison.Ordinal);
        Assert.Contains($"so a fuse of {Fuse("33 CFR 183.425")} at the most, a {Fuse("FAA AC 43.13-1B table 11-3")} fuse by", page, StringComparison.Ordinal);
        Assert.All(AmpacityRules.All.Select(r => r.Name.Replace(" single", "", StringComparison.Ordinal).Replace(" bundle", "", StringComparison.Ordinal)).Where(n => !n.EndsWith(" C", StringComparison.Ordinal)), name => Assert.Contains($"| {name}", page, StringComparison.Ordinal));
    }
}

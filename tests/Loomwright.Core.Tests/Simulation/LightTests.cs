using Loomwright.Parts;
using Loomwright.Simulation;
using static Loomwright.Tests.Simulation.Sketch;

namespace Loomwright.Tests.Simulation;

public class LightTests
{
    [Fact]
    public void A_filament_dimmed_to_a_fifth_of_the_time_sees_its_voltage_times_the_root_and_gives_six_and_a_half_percent()
    {
        // Check value: 0.2^(3.4/2) = 6.5 %. The healthy loom shows the same lamp undimmed.
        var seen = Dimmed("lamp", ("filament", 5.0), 0.2).Seen("lamp");
        Assert.Equal(Math.Pow(0.2, 1.7), seen.LightShare!.Value, 0.001);
        Assert.Equal(Symbol.Dim, seen.Symbol);
    }

    [Fact]
    public void A_dimmed_filament_draws_in_the_mean_what_its_cooler_resistance_lets_through()
    {
        // At V·√s the lamp takes i(V·√s) steadily; in pulses of V the same heat needs √s·i(V·√s) in the mean: s·V/R.
        var full = Dimmed("lamp", ("filament", 5.0), 1).Seen("lamp");
        var dim = Dimmed("lamp", ("filament", 5.0), 0.2).Seen("lamp");
        var hot = new Loomwright.Parts.Filament(5, 12);
        var volts = full.Voltage.Volts;
        Assert.Equal(Math.Sqrt(0.2) * hot.At(volts * Math.Sqrt(0.2)).Amps, dim.Current.Amps, 0.002);
        Assert.Equal(0.2 * volts, dim.Voltage.Volts, 0.02);
    }

    [Fact]
    public void An_led_dimmed_to_a_fifth_of_the_time_gives_a_fifth_of_its_light() =>
        Assert.Equal(0.2, Dimmed("lamp", ("led", 3.0), 0.2).Seen("lamp").LightShare!.Value, 0.002);

    [Fact]
    public void Full_light_is_what_the_lamps_own_function_gives_so_a_lamp_that_is_meant_dimmed_counts_as_lit()
    {
        var bench = new Sketch().Battery().Box([("tail", Of(("terminal", "X4"), ("when", "key at 20 %")))]).BoxWired()
            .Part("lamp", "lamp", ("filament", 5.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"))
            .Function("tail", "lock is riding", "lamp", "lit", "lock");
        var seen = new Rig(bench.Loom).Do(Set("lock", "riding")).Seen("lamp");
        Assert.Equal(1, seen.LightShare!.Value, 1e-9);
        Assert.Equal(Symbol.Lit, seen.Symbol);
    }

    [Fact]
    public void A_lamp_no_function_names_is_measured_against_itself_straight_across_the_supply()
    {
        // 1 Ω of horn in series stands for a bad joint: 12.6 V · 6.86/(6.86 + 1) or so, and that to the power 3.4.
        var seen = new Rig(new Sketch().Battery().Part("lamp", "lamp", ("filament", 21.0)).Part("joint", "horn", ("current", 12.0))
            .Wires(("battery.+", "joint.1"), ("joint.2", "lamp.+"), ("lamp.-", "battery.-")).Loom).Now.Seen("lamp");
        Assert.Equal(Math.Pow(seen.Voltage.Volts / 12.6, 3.4), seen.LightShare!.Value, 0.02);
        Assert.Equal(Symbol.Dim, seen.Symbol);
    }

    [Fact]
    public void A_function_that_needs_its_button_held_for_a_while_is_waited_for()
    {
        var bench = new Sketch().Battery().Box([("beacon", Of(("terminal", "X4"), ("when", "pressed(first, 2 s)")))]).BoxWired()
            .Part("lamp", "lamp", ("filament", 21.0)).Wires(("box.X4", "lamp.+"), ("lamp.-", "ground bar"))
            .Function("beacon", "pressed(first button, 2 s) and lock is riding", "lamp", "lit", "lock", "first button");
        var rig = new Rig(bench.Loom);
        rig.Do(Set("lock", "riding"));
        Assert.Equal(Symbol.Dark, rig.Do(Set("first button", "pressed")).Symbol("lamp"));
        Assert.Equal(1, rig.Do(Wait(2)).Seen("lamp").LightShare!.Value, 1e-9);
    }

    [Fact]
    public void Of_two_buttons_that_both_do_the_first_in_the_file_is_pressed_to_find_full_light()
    {
        // The first button's own output has a poor switch, the second's a good one: full light is what the first gives.
        var bench = new Sketch().Battery()
            .Box([("a", Of(("terminal", "X4"), ("when", "first"), ("on resistance", 1.0), ("body diode", "none"))), ("b", Of(("terminal", "X5"), ("when", "second"), ("body diode", "none")))])
            .BoxWired().Part("lamp", "lamp", ("filament", 21.0))
            .Wires(("box.X4", "lamp.+"), ("box.X5", "lamp.+"), ("lamp.-", "ground bar"))
            .Function("either", "(second button or first button) and lock is riding", "lamp", "lit", "lock", "first button", "second button");
        var rig = new Rig(bench.Loom);
        rig.Do(Set("lock", "riding"));
        Assert.Equal(1, rig.Do(Set("first button", "pressed")).Seen("lamp").LightShare!.Value, 1e-9);
        rig.Do(Set("first button", "released"));
        Assert.InRange(rig.Do(Set("second button", "pressed")).Seen("lamp").LightShare!.Value, 1.3, 1.8);
    }

    [Theory]
    [InlineData(0.0099, Symbol.Dark)]
    [InlineData(0.01, Symbol.Dim)]
    [InlineData(0.7999, Symbol.Dim)]
    [InlineData(0.8, Symbol.Lit)]
    public void Below_one_percent_a_lamp_is_dark_below_eighty_dim(double share, Symbol called) => Assert.Equal(called, Light.Called(share));

    [Theory]
    [InlineData(1, 0, Symbol.Flashing)]
    [InlineData(1, 0.2, Symbol.Flashing)]
    [InlineData(0.2, 0, Symbol.Flashing)]
    [InlineData(0.85, 0.75, Symbol.Dim)]
    [InlineData(1, 0.9, Symbol.Lit)]
    [InlineData(0.009, 0, Symbol.Dark)]
    public void A_lamp_flashes_when_it_is_dark_or_has_less_than_half_its_light_between(double on, double between, Symbol called) =>
        Assert.Equal(called, Light.Called(on, between));

    [Fact]
    public void No_rate_a_published_rule_allows_is_called_fast_or_slow_and_one_above_it_is_called_fast() =>
        PublishedRows.Each("06-rules-jurisdiction-dependent.csv", PublishedTable.Read("06-rules-jurisdiction-dependent.csv").Rows.Where(r => r["unit"] == "1/min"), PublishedRows.SaysMemory, row =>
        {
            // Written as 90 +/- 30 or as 60 to 120.
            var ends = row["value"].Split(" to ");
            var (least, most) = ends is [var from, var to] ? (Number(from), Number(to)) : (Number(row["value"].Split(' ')[0]) - Number(row["value"].Split(' ')[2]), Number(row["value"].Split(' ')[0]) + Number(row["value"].Split(' ')[2]));
            Assert.Equal((Symbol.Flashing, Symbol.Flashing, Symbol.FlashingFast), (Light.Called(1, 0, least), Light.Called(1, 0, most), Light.Called(1, 0, most + 1)));
        });

    [Theory]
    [InlineData(1.34, null)]
    [InlineData(1.35, 21.2)]
    [InlineData(1.60, 3.54)]
    [InlineData(2.00, 0.866)]
    [InlineData(6.00, 0.0447)]
    public void A_blade_fuse_opens_in_the_middle_of_its_standards_band(double share, double? seconds)
    {
        // Roots of least times most, ISO 8820-3: 160 % and 200 % read in a public extract, 135 % and 600 % from memory.
        if (seconds is { } time)
        {
            Assert.Equal(time, FuseBand.Blade.LikelySeconds(share)!.Value, 0.01 * time);
        }
        else
        {
            Assert.Null(FuseBand.Blade.LikelySeconds(share));
        }
    }

    [Fact]
    public void More_current_always_opens_a_fuse_sooner()
    {
        var times = Enumerable.Range(0, 200).Select(i => FuseBand.Blade.LikelySeconds(1.35 + (i * 0.1))!.Value).ToList();
        Assert.Equal(times.OrderDescending(), times);
        Assert.Equal(times.Count, times.Distinct().Count());
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static Frame Dimmed(string lamp, (string, object) light, double share)
    {
        Sketch With(string when) => new Sketch().Battery().Box([("out", Of(("terminal", "X4"), ("when", when)))]).BoxWired()
            .Part(lamp, "lamp", light).Wires(("box.X4", $"{lamp}.+"), ($"{lamp}.-", "ground bar"))
            .Function("lit", "lock is riding", lamp, "lit", "lock");
        var percent = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"key at {share * 100:0} %");
        return new Rig(With(percent).Loom, new RigOptions { Healthy = With("key").Loom }).Do(Set("lock", "riding"));
    }
}

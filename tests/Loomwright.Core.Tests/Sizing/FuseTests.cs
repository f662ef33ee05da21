using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Sizing;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Sizing;

public sealed class FuseTests
{
    [Fact]
    public void Every_form_of_fuse_stays_inside_the_band_of_its_standard_at_every_printed_multiple() =>
        Each("04-fuse-time-limits.csv", PublishedTable.Read("04-fuse-time-limits.csv").Rows, SaysMemory, row =>
        {
            // 110 % and the bolt-down's 100 %: it must stand them and need never open, which a likely time of null says.
            var band = row["type"].StartsWith("blade", StringComparison.Ordinal) ? FuseBand.Blade : FuseBand.BoltDown;
            var share = row.Number("current_percent_of_rating") / 100;
            Assert.InRange(band.LeastSeconds(share)!.Value, row.Number("t_min_s") * 0.999999, double.MaxValue);
            if (row["t_max_s"].Length == 0)
            {
                Assert.Null(band.LikelySeconds(share));
            }
            else
            {
                Assert.InRange(band.LikelySeconds(share)!.Value, row.Number("t_min_s"), row.Number("t_max_s"));
                Assert.InRange(band.MostSeconds(share)!.Value, row.Number("t_min_s"), row.Number("t_max_s") * 1.000001);
            }
        });

    [Fact]
    public void More_current_never_lets_a_fuse_stand_longer() => Assert.All([FuseBand.Blade, FuseBand.BoltDown], band =>
    {
        var shares = Enumerable.Range(0, 300).Select(i => 1.35 * Math.Pow(1.01, i)).ToList();
        Assert.Equal(shares.Select(band.MostSeconds).OrderDescending(), shares.Select(band.MostSeconds));
        Assert.Equal(shares.Select(band.LeastSeconds).OrderDescending(), shares.Select(band.LeastSeconds));
        Assert.All(shares, s => Assert.True(band.LeastSeconds(s) <= band.MostSeconds(s)));
    });

    [Theory]
    [InlineData(2.5, 20, true)]
    [InlineData(2.5, 30, false)]
    [InlineData(0.75, 30, false)]
    [InlineData(6, 30, true)]
    public void A_fuse_keeps_a_wire_below_its_insulations_class_over_the_whole_range_or_does_not(double size, double rating, bool keeps)
    {
        // At 20 °C, 105 °C insulation, metric practice; blade fuse.
        var heat = Heat.Of(new CrossSection(size), new Surroundings(new Temperature(20), new Temperature(105)), AmpacityRules.Usual);
        Assert.Equal(keeps, FuseAgainstWire.Of(FuseBand.Blade, rating, heat).Hottest.Celsius <= 105);
    }

    [Fact]
    public void The_worst_current_for_a_wire_is_a_lasting_overload_and_not_a_dead_short()
    {
        var heat = Heat.Of(new CrossSection(2.5), new Surroundings(new Temperature(20), new Temperature(105)), AmpacityRules.Usual);
        var worst = FuseAgainstWire.Of(FuseBand.Blade, 20, heat);
        Assert.InRange(worst.At.Amps, 20, 40);
        Assert.True(heat.After(heat.Air, 400, FuseBand.Blade.MostSeconds(20)!.Value).Celsius < worst.Hottest.Celsius);
    }

    [Theory]
    [InlineData(10, 30, false)]
    [InlineData(10, 15, true)]
    [InlineData(30, 30, true)]
    public void A_branch_fuse_opens_alone_when_the_main_is_three_times_as_large_and_not_when_they_are_alike(double branch, double main, bool lost) =>
        Assert.Equal(lost, Selectivity.LostFrom(FuseBand.Blade, branch, FuseBand.Blade, main, 500) is not null);

    [Fact]
    public void A_blade_behind_a_bolted_strip_of_three_times_its_rating_opens_alone_at_any_current() =>
        Assert.Null(Selectivity.LostFrom(FuseBand.Blade, 30, FuseBand.BoltDown, 100, 2000));

    [Fact]
    public void A_cold_headlamp_is_ridden_by_a_fuse_of_its_size_and_may_open_a_far_smaller_one()
    {
        // 55 W at 12 V: 4.6 A hot, 64 A cold. 04-fuse-practice.csv: the inrush must stay below the least time at 600 %.
        Assert.False(Inrush.MayOpen(FuseBand.Blade, 10, 64));
        Assert.True(Inrush.MayOpen(FuseBand.Blade, 5, 64));
    }
}

using CsCheck;
using Loomwright.Bench;
using Loomwright.Quantities;
using Loomwright.Sizing;

namespace Loomwright.Tests.Bench;

public class BladeFuseTests
{
    // Published: body colours by rating, ISO 8820-3, from a public table (the file names it).
    private static readonly List<(double Amps, string[] Colours)> Published =
        [.. PublishedTable.Read("04-fuse-colours.csv").Rows.Select(r => (r.Number("rating_A"), r["also_seen"].Split(" or ").Append(r["colour"]).ToArray()))];

    [Fact]
    public void The_ratings_and_colours_are_the_published_ones()
    {
        Assert.All(Published, p => Assert.Contains(BladeFuses.Colour(p.Amps), p.Colours));
        if (PublishedTable.IsOurs)
        {
            Assert.Equal(Published.Select(p => p.Amps), Sold.Blades.Select(r => r.Amps));
        }
    }

    [Fact]
    public void First_power_runs_through_the_smallest_fuse_that_stands_a_quarter_more_than_the_stage_draws() =>
        Gen.Double[0, 32].Sample(amps =>
        {
            var chosen = BladeFuses.For(new Current(amps), null).Rating.Amps;
            Assert.True(chosen >= 1.25 * amps);
            Assert.All(Published.Where(p => p.Amps < chosen), p => Assert.True(p.Amps < 1.25 * amps));
        });

    [Fact]
    public void It_is_never_above_the_fuse_that_stays() =>
        Gen.Select(Gen.Double[0, 60], Gen.OneOf(Gen.Const(2.0), Gen.Const(7.5), Gen.Const(20.0))).Sample((amps, final) =>
            Assert.True(BladeFuses.For(new Current(amps), new Current(final)).Rating.Amps <= final));
}

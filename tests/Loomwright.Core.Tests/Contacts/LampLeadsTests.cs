using System.Collections.Immutable;
using Loomwright.Contacts;

namespace Loomwright.Tests.Contacts;

public sealed class LampLeadsTests
{
    private static readonly ImmutableArray<string> Three = ["white", "black", "blue"];

    [Fact]
    public void Between_the_ends_of_two_filaments_the_meter_shows_the_sum_and_so_the_shared_lead_is_known()
    {
        // 21 W and 5 W at 12 V, hot over cold 14 (docs/models/lamp.md): 0.49 and 2.06 ohm.
        var lamp = LampLeads.Of(Three, [new(0, 1, 0.49), new(0, 2, 2.55), new(1, 2, 2.06)]);
        Assert.Equal("black", lamp.Shared);
        Assert.StartsWith("white to black: 0.49 Ω cold, the filament of the most watts", lamp.Words[1], StringComparison.Ordinal);
        Assert.StartsWith("blue to black: 2.06 Ω cold, fewer watts", lamp.Words[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Main_and_dip_of_a_headlamp_lie_too_near_for_ohms_and_another_way_is_told()
    {
        // 60 W and 55 W at 12 V, hot over cold 14: 0.17 and 0.19 ohm, which a hand meter shows as 0.2 both.
        var lamp = LampLeads.Of(Three, [new(0, 1, 0.17), new(0, 2, 0.36), new(1, 2, 0.19)]);
        Assert.Equal("black", lamp.Shared);
        Assert.DoesNotContain(lamp.Words, w => w.Contains("most watts", StringComparison.Ordinal) || w.Contains("fewer watts", StringComparison.Ordinal));
        Assert.Equal(2, lamp.Words.Count(w => w.Contains("too near the next", StringComparison.Ordinal)));
        Assert.Contains("More amps is more watts", lamp.Words[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Ohms_that_do_not_add_up_name_no_lead()
    {
        var lamp = LampLeads.Of(Three, [new(0, 1, 2), new(0, 2, 2), new(1, 2, 2)]);
        Assert.Null(lamp.Shared);
        Assert.Contains("measure again", lamp.Words[0], StringComparison.Ordinal);
    }

    [Fact]
    public void One_filament_has_no_plus_end()
    {
        var lamp = LampLeads.Of(["a", "b"], [new(0, 1, 0.5)]);
        Assert.Equal("One filament, a to b: 0.5 Ω cold; either way round.", Assert.Single(lamp.Words));
    }

    [Fact]
    public void A_lead_no_filament_reaches_is_named()
    {
        var lamp = LampLeads.Of(Three, [new(0, 1, 0.5), new(0, 2), new(1, 2)]);
        Assert.Contains(lamp.Words, w => w.StartsWith("blue reaches no filament", StringComparison.Ordinal));
    }

    [Fact]
    public void An_LED_shows_nothing_to_the_ohmmeter_and_is_then_fed_both_ways_round()
    {
        var silent = LampLeads.Of(["a", "b"], [new(0, 1)]);
        Assert.Equal(new LampQuestion(0, 1, Feed: true), silent.Next);
        var once = LampLeads.Of(["a", "b"], [new(0, 1), new(0, 1, Fed: true)]);
        Assert.Equal(new LampQuestion(1, 0, Feed: true), once.Next);
        var lit = LampLeads.Of(["a", "b"], [new(0, 1), new(0, 1, Fed: true), new(1, 0, Fed: true, Lights: true)]);
        Assert.Null(lit.Next);
        Assert.Equal("It lights with plus on b and minus on a, and only so.", Assert.Single(lit.Words));
    }

    [Fact]
    public void Two_LEDs_that_light_to_one_minus_share_it()
    {
        ImmutableArray<LampReading> silent = [new(0, 1), new(0, 2), new(1, 2)];
        ImmutableArray<LampReading> fed = [.. from a in Enumerable.Range(0, 3) from b in Enumerable.Range(0, 3) where a != b select new LampReading(a, b, Fed: true, Lights: b == 1)];
        Assert.Equal("black", LampLeads.Of(Three, [.. silent, .. fed]).Shared);
    }
}

using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

public sealed class MistakeTests(Bench bench)
{
    [Theory]
    [InlineData("laptop")]
    [InlineData("phone")]
    public async Task A_key_feed_left_out_leaves_everything_dark_until_it_is_put_back(string screen)
    {
        await using var bike = await bench.Try(screen);
        await bike.Turn("lock", "riding");
        await bike.Sees("rear cluster tail", "lit");

        await bike.PutIn("key feed left out");
        await bike.Sees("rear cluster tail", "dark, was lit");
        await bike.Light("X1", "off");
        await Expect(bike.Page.GetByText("What the mistake changed")).ToBeVisibleAsync();

        await bike.TakeOut();
        await bike.Sees("rear cluster tail", "lit");
        await bike.Light("X1", "on");
    }

    [Theory]
    [InlineData("laptop")]
    [InlineData("phone")]
    public async Task Plus_touching_ground_at_the_box_blows_the_main_fuse_and_the_bike_is_dead(string screen)
    {
        await using var bike = await bench.Try(screen);
        await bike.Turn("lock", "riding");
        await bike.Fuse("main fuse", "whole");

        await bike.PutIn("box B+ B- touch");
        await bike.Fuse("main fuse", "blown, was whole");
        await bike.Sees("rear cluster tail", "dark, was lit");
        Assert.Equal("0 A", await bike.Amps("box supply"));

        await bike.TakeOut();
        await bike.Fuse("main fuse", "whole");
        await bike.Sees("rear cluster tail", "lit");
    }

    [Theory]
    [InlineData("laptop")]
    [InlineData("phone")]
    public async Task An_output_wire_one_terminal_over_leaves_the_lights_right_and_the_lamp_dark(string screen)
    {
        await using var bike = await bench.Try(screen);
        await bike.Turn("lock", "riding");
        await bike.Hold("front brake");
        await bike.Sees("rear cluster stop", "lit");

        await bike.PutIn("stop lamp feed sits on X3");

        await bike.Sees("rear cluster stop", "dark, was lit");
        await bike.Light("Z1", "on");
        await bike.Light("X4", "on");
    }

    [Fact]
    public async Task A_lost_tail_ground_takes_every_lamp_on_it_at_once()
    {
        await using var bike = await bench.Try("laptop");
        await bike.Turn("lock", "riding");
        await bike.Hold("front brake");
        await bike.Sees("rear cluster stop", "lit");

        await bike.PutIn("tail stud lost");

        await bike.Sees("rear cluster tail", "dark, was lit");
        await bike.Sees("rear cluster stop", "dark, was lit");
    }
}

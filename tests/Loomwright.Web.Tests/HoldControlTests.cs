using Bunit;
using Loomwright.Parts;
using Loomwright.Web.Try;
using Microsoft.AspNetCore.Components.Web;

namespace Loomwright.Web.Tests;

public sealed class HoldControlTests : BunitContext
{
    private readonly List<string> _moves = [];
    private readonly IRenderedComponent<HoldControl> _button;

    public HoldControlTests()
    {
        var brake = new Control("front brake", ["released", "pressed"], "released", Momentary: true);
        _button = Render<HoldControl>(p => p.Add(c => c.Control, brake).Add(c => c.Position, "released").Add(c => c.OnMove, Move));
    }

    [Fact]
    public void It_is_pressed_while_the_finger_is_on_it()
    {
        _button.Find(".key").PointerDown();
        _button.Find(".key").PointerUp();

        Assert.Equal(["pressed", "released"], _moves);
    }

    [Fact]
    public void A_finger_that_slides_off_lets_it_go_once()
    {
        _button.Find(".key").PointerDown();
        _button.Find(".key").PointerLeave();
        _button.Find(".key").PointerUp();

        Assert.Equal(["pressed", "released"], _moves);
    }

    [Fact]
    public void A_key_held_down_repeats_but_presses_once()
    {
        _button.Find(".key").KeyDown(new KeyboardEventArgs { Key = " " });
        _button.Find(".key").KeyDown(new KeyboardEventArgs { Key = " ", Repeat = true });
        _button.Find(".key").KeyUp(new KeyboardEventArgs { Key = " " });

        Assert.Equal(["pressed", "released"], _moves);
    }

    [Fact]
    public void Hold_keeps_it_pressed_until_it_is_let_go()
    {
        _button.Find(".latch").Click();
        Assert.Equal(["pressed"], _moves);
        Assert.Equal("let go", _button.Find(".latch").TextContent);

        _button.Find(".latch").Click();
        Assert.Equal(["pressed", "released"], _moves);
    }

    private void Move(string position)
    {
        _moves.Add(position);
        _button.Render(p => p.Add(c => c.Position, position));
    }
}

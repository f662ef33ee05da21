using Loomwright.Design;
using Loomwright.Parts;
using static Loomwright.Tests.Parts.Given;

namespace Loomwright.Tests.Parts;

public sealed class SwitchTests
{
    [Fact]
    public void A_lock_joins_in_each_position_the_pairs_of_its_contact_table()
    {
        var theLock = Lock(("riding", Pairs(("r", "s"), ("U", "t"))), ("park", Pairs(("s", "r"), ("r", "u"))));
        Assert.Empty(theLock.Problems);
        Assert.Equal(new Control("it", ["off", "riding", "park"], "off", false) with { Positions = theLock.Controls[0].Positions }, theLock.Controls[0]);
        Assert.Equal(
            ["r to s: riding, park", "t to u: riding", "r to u: park"],
            theLock.Elements.Select(e => $"{e.Name}: {string.Join(", ", ((Gate.ByControl)e.Gate!).ClosedIn)}"));
        Assert.Equal(0.020, Assert.IsType<Ohms>(theLock.Elements[0].Curve).ResistanceOhms);
    }

    [Fact]
    public void A_lead_that_is_not_there_is_named_with_the_position_that_names_it()
    {
        var problem = Assert.Single(Lock(("riding", Pairs(("r", "ss")))).Problems);
        Assert.Equal(new Problem("positions/riding", "there is no ss among the terminals", "write s"), problem);
    }

    [Fact]
    public void A_lever_that_springs_back_rests_where_it_says()
    {
        var lever = Model("switch",
            ("terminals", Words("a", "b")),
            ("positions", Group(("pulled", Pairs(("a", "b"))), ("free", Pairs()))),
            ("rest", Word("Free")),
            ("action", Word("springs back")));
        Assert.Empty(lever.Problems);
        Assert.Equal(("free", true), (lever.Controls[0].Rest, lever.Controls[0].Momentary));
    }

    [Fact]
    public void A_button_conducts_while_pressed_and_one_that_rests_closed_while_released()
    {
        Assert.Equal(["pressed"], ClosedIn(Model("button")));
        Assert.Equal(["released"], ClosedIn(Model("button", ("rests", Word("closed")))));
    }

    [Fact]
    public void A_part_with_two_terminals_says_so_when_three_are_named()
    {
        var problem = Assert.Single(Model("fuse", ("rating", Si(10)), ("terminals", Words("a", "b", "c"))).Problems);
        Assert.Equal("write two, as in [1, 2]", problem.Cure);
    }

    private static Model Lock(params (string Key, Value Value)[] positions) =>
        Model("switch", ("terminals", Words("r", "s", "t", "u")), ("positions", Group([("off", Pairs()), .. positions])));

    private static System.Collections.Immutable.ImmutableArray<string> ClosedIn(Model button) => ((Gate.ByControl)Assert.Single(button.Elements).Gate!).ClosedIn;
}

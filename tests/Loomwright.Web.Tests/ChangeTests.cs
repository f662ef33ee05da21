using Loomwright.Simulation;
using Loomwright.Web.Try;

namespace Loomwright.Web.Tests;

public sealed class ChangeTests
{
    private readonly Session _session = Kittiwake.Session();

    [Fact]
    public void Nothing_has_changed_while_no_mistake_is_in() => Assert.Empty(Change.All(_session.View));

    [Fact]
    public void A_lost_ground_is_told_first_by_the_lamps_that_went_dark()
    {
        _session.Do(new Operation.Set("lock", "riding"));

        _session.PutIn(_session.Mistake("tail stud lost"));

        Assert.Equal(new Change("rear cluster tail", "is dark, was lit"), Change.All(_session.View)[0]);
    }

    [Fact]
    public void A_box_that_does_not_wake_is_told_with_its_lights_together()
    {
        _session.Do(new Operation.Set("lock", "riding"));

        _session.PutIn(_session.Mistake("key feed left out"));

        var changes = Change.All(_session.View);
        Assert.Contains(new Change("box", "is asleep, was awake"), changes);
        Assert.Contains(new Change("box lights at X1, X7", "are off, were on"), changes);
    }
}

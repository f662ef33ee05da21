using Loomwright.Simulation;
using Loomwright.Text;
using Loomwright.Web.Try;

namespace Loomwright.Web.Tests;

public sealed class SessionTests
{
    private readonly Session _session = Kittiwake.Session();

    [Fact]
    public void Undo_takes_a_press_and_its_letting_go_back_together()
    {
        _session.Do(new Operation.Set("lock", "riding"));
        _session.Do(new Operation.Set("left button", "pressed"));
        _session.Do(new Operation.Set("left button", "released"));
        Assert.Equal(Symbol.Flashing, Lamp("left rear indicator"));

        _session.Undo();

        Assert.Equal(Symbol.Dark, Lamp("left rear indicator"));
        Assert.Equal(Symbol.Lit, Lamp("rear cluster.tail"));
    }

    [Fact]
    public void Undo_of_a_button_still_held_lets_it_go()
    {
        _session.Do(new Operation.Set("lock", "riding"));
        _session.Do(new Operation.Set("front brake", "pressed"));

        _session.Undo();

        Assert.Equal("released", _session.View.Now.Controls.First(c => c.Control == "front brake").Position);
    }

    [Fact]
    public void A_fuse_blown_by_a_mistake_is_whole_again_when_the_mistake_is_out()
    {
        _session.PutIn(_session.Mistake("box B+ B- touch"));
        Assert.Equal(FuseState.Blown, _session.View.Now.Fuses[0].State);

        _session.TakeOut();

        Assert.Equal(FuseState.Whole, _session.View.Now.Fuses[0].State);
    }

    [Fact]
    public void A_mistake_put_in_keeps_what_the_hands_did()
    {
        _session.Do(new Operation.Set("lock", "riding"));

        _session.PutIn(_session.Mistake("stop lamp feed left out"));

        Assert.Equal("riding", _session.View.Now.Controls.First(c => c.Control == "lock").Position);
        Assert.Equal(Symbol.Lit, Lamp("rear cluster.tail"));
    }

    [Fact]
    public void A_bike_whose_file_changed_is_as_the_hands_and_the_mistake_left_it()
    {
        _session.Do(new Operation.Set("lock", "riding"));
        _session.PutIn(_session.Mistake("stop lamp feed left out"));
        var changed = Kittiwake.Bike.Text.Content.Replace("name: Kittiwake", "name: Heron", StringComparison.Ordinal);

        var next = _session.GoOn(Bike.Read(new SourceText("b", changed)))!;

        Assert.Equal("Heron", next.Loom.Name);
        Assert.Equal(_session.Mistake!.Sentence, next.Mistake!.Sentence);
        Assert.Equal("riding", next.View.Now.Controls.First(c => c.Control == "lock").Position);
        Assert.Equal(Symbol.Lit, next.View.Now.Seen.First(s => s.Name == "rear cluster.tail").Symbol);
    }

    [Fact]
    public void What_was_done_at_a_control_that_is_gone_from_the_file_is_left_out()
    {
        _session.Do(new Operation.Set("lock", "riding"));
        var changed = Kittiwake.Bike.Text.Content.Replace("riding", "road", StringComparison.Ordinal);

        var next = _session.GoOn(Bike.Read(new SourceText("b", changed)))!;

        Assert.False(next.CanUndo);
    }

    [Fact]
    public void Every_mistake_has_its_own_sentence()
    {
        Assert.NotEmpty(_session.Catalogue);
        Assert.Equal(_session.Catalogue.Count, _session.Catalogue.Select(m => m.Sentence).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void The_doings_of_every_step_of_the_plan_can_be_shown_on_the_bike()
    {
        foreach (var stage in _session.Plan.Stages)
        {
            foreach (var step in stage.Steps.Where(s => s.Do is not null))
            {
                _session.Show(stage, step);
                Assert.Contains(_session.View.Now.Controls, c => c.Control == step.Do!.Control && c.Position == step.Do.Position);
            }
        }
    }

    private Symbol Lamp(string name) => _session.View.Now.Seen.First(s => s.Name == name).Symbol;
}

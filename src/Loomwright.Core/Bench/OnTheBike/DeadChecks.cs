using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench.OnTheBike;

/// <summary>Battery off: nothing joined that must not be, every ground home, every position of every switch between feed and ground.</summary>
internal sealed class DeadChecks(Everything bike)
{
    public Stage Stage(int number)
    {
        var steps = new Steps(number);
        var (low, sides) = (Unplugged.In(bike.Loom, bike.Paths), new FeedSide(bike.Paths));
        var rig = new Rig(Unplugged.Of(bike.Loom, bike.Paths, low));
        steps.Add(Act.Connect, $"Battery off, both leads. Everything else as it stays{(low.IsEmpty ? "" : $", but unplugged: {string.Join(", ", low)}")}.", s => s with { Cautions = bike.Once.Say(Cautions.OhmsPowerOff) });
        var (feed, back) = (bike.Paths.Feed, bike.Paths.Return);
        Add("From the lead of", feed, back, null);
        foreach (var ground in bike.Loom.Parts.Where(p => p.Kind is "ground stud" or "ground body"))
        {
            Add("The way home of", new TerminalRef(ground.Name, ""), back, null);
        }

        foreach (var load in rig.Now.Seen.Select(s => s.Name))
        {
            var tie = Sighted.Tie(bike.Paths, load);
            var returns = bike.Paths.Joined(back, t => t.Via is Via.Wire or Via.Joint);
            foreach (var end in new[] { tie.A, tie.B }.Where(returns.Contains))
            {
                Add($"The ground lead of {Spoken.Of(load)}, from", end, back, null);
            }
        }

        foreach (var control in bike.Survey.Controls.Where(c => c != bike.Engine && bike.Loom.Parts.Any(p => bike.Paths.Models.GetValueOrDefault(p.Name)?.Elements.Any(e => e.Gate is Gate.ByControl g && Names.Same(g.Control, c.Name)) == true)))
        {
            foreach (var position in control.Positions.Where(p => !Names.Same(p, control.Rest)))
            {
                var set = new Operation.Set(control.Name, position);
                rig.Do(set);
                Add($"With {control.Name} at {position}, from the lead of", feed, back, set);
                rig.Do(bike.Back(control.Name));
            }

            // Nothing to read: the next reading is taken from here.
            steps.Add(Act.Measure, $"{control.Name} back to {control.Rest}.", s => s with { Do = bike.Back(control.Name) });
        }

        var again = low.Except(bike.Aside.Parts, Names.Comparer).ToList();
        steps.Add(Act.Measure, $"{(again.Count == 0 ? "" : $"Plug in again: {string.Join(", ", again)}. ")}Cap every lead that stays free.");
        return bike.Stage(number, "dead checks", "What is wrong now costs a minute; with the battery on it costs a wire.", steps, [], bike.Loom);

        void Add(string text, TerminalRef red, TerminalRef black, Operation.Set? done)
        {
            var band = Bands.Of(rig.Ohms(red, black), plain: false, sides.IsAcross(red, black));
            steps.Add(Act.Measure, $"{text} {bike.Mark(red)} to the lead of {bike.Mark(black)}.", s => s with
            {
                Do = done,
                Unplugged = low,
                Marks = [bike.Mark(red), bike.Mark(black)],
                Meter = MeterCards.Ohms(Tip(red), Tip(black), band),
                Expect = [new Expectation($"{bike.Mark(red)} to {bike.Mark(black)}", Bands.Words(band), band)],
            });
        }
    }

    private Mark Tip(TerminalRef at) => bike.Mark(at) with { Instead = at == bike.Paths.Feed || at == bike.Paths.Return ? MeterCards.TakenOff : "" };
}

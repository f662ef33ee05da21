using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench.OnTheBike;

/// <summary>Battery off: nothing joined that must not be, every ground home, and every position of every switch, the key and what else leads to it turned on.</summary>
internal sealed class DeadChecks(Everything bike)
{
    public Stage Stage(int number)
    {
        var steps = new Steps(number);
        var (low, sides) = (Unplugged.In(bike.Loom, bike.Paths), new FeedSide(bike.Paths));
        var rig = new Rig(Unplugged.Of(bike.Loom, bike.Paths, low));
        steps.Add(Act.Connect, $"Key off, engine still. Battery off, both leads: {bike.Mark(bike.Paths.Return)} first. Cap both. Everything else as it stays{(low.IsEmpty ? "" : $", but unplugged: {string.Join(", ", low)}")}.", s => s with { Cautions = bike.Once.Say([.. bike.Loom.Parts.Where(p => p.Kind == "battery").Select(Cautions.Of), Cautions.Rings, Cautions.OhmsPowerOff]) });
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

        // Behind the lock nothing can be read before it is turned: it comes first and stays.
        foreach (var control in bike.Survey.Controls.Where(HasContact).OrderBy(c => !IsKey(c.Name)))
        {
            var before = LeadUp(control);
            foreach (var set in before)
            {
                Move(set);
            }

            foreach (var position in control.Positions.Where(p => !Names.Same(p, control.Rest)))
            {
                var set = new Operation.Set(control.Name, position);
                rig.Do(set);
                Add($"With {string.Join(", ", rig.Now.Controls.Where(c => !c.AtRest).Select(c => $"{c.Control} at {c.Position}"))}: from the lead of", feed, back, set);
            }

            foreach (var set in before.Reverse().Select(o => bike.Back(o.Control)).Prepend(bike.Key.FirstOrDefault(k => Names.Same(k.Control, control.Name)) ?? bike.Back(control.Name)))
            {
                Move(set);
            }
        }

        foreach (var key in bike.Key.Reverse())
        {
            Move(bike.Back(key.Control));
        }

        var again = low.Except(bike.Aside.Parts, Names.Comparer).ToList();
        steps.Add(Act.Measure, $"{(again.Count == 0 ? "" : $"Plug in again: {string.Join(", ", again)}. ")}Cap every lead that stays free.");
        return bike.Stage(number, "dead checks", "What is wrong now costs a minute; with the battery on it costs a wire.", steps, [], bike.Loom);

        // Nothing to read: the next reading is taken from here.
        void Move(Operation.Set set)
        {
            if (!rig.Now.Controls.Any(c => Names.Same(c.Control, set.Control) && Names.Same(c.Position, set.Position)))
            {
                rig.Do(set);
                steps.Add(Act.Measure, $"{set.Control} {(Names.Same(set.Position, bike.Control(set.Control).Rest) ? "back " : "")}to {set.Position}.", s => s with { Do = set });
            }
        }

        void Add(string text, TerminalRef red, TerminalRef black, Operation.Set? done)
        {
            var band = Bands.Of(rig.Ohms(red, black), plain: false, sides.IsAcross(red, black), rig.IsThroughElectronics(red, black));
            steps.Add(Act.Measure, $"{text} {bike.Mark(red)} to the lead of {bike.Mark(black)}.", s => s with
            {
                Do = done,
                Unplugged = low,
                Marks = [bike.Mark(red), bike.Mark(black)],
                Meter = MeterCards.Ohms(Tip(red), Tip(black), band),
                Expect = [new Expectation($"{Tip(red)} to {Tip(black)}", Bands.Words(band), band)],
            });
        }
    }

    private bool HasContact(Control control) => control != bike.Engine && bike.Loom.Parts.Any(p => Moves(p, control));

    private bool Moves(Part part, Control control) => bike.Paths.Models.GetValueOrDefault(part.Name)?.Elements.Any(e => e.Gate is Gate.ByControl g && Names.Same(g.Control, control.Name)) == true;

    private bool IsKey(string control) => bike.Key.Any(k => Names.Same(k.Control, control));

    // What else has to be moved so that its contact hangs on the feed: a dip switch behind the light switch.
    private ImmutableArray<Operation.Set> LeadUp(Control control) =>
        IsKey(control.Name) ? []
        : bike.Survey.Loads.Where(l => l.Do.Any(o => Names.Same(o.Control, control.Name)))
            .Select(l => l.Do.RemoveAll(o => Names.Same(o.Control, control.Name) || IsKey(o.Control))).Prepend([])
            .Cast<ImmutableArray<Operation.Set>?>().FirstOrDefault(o => HangsOnFeed(control, o!.Value)) ?? [];

    private bool HangsOnFeed(Control control, ImmutableArray<Operation.Set> moved)
    {
        var positions = bike.Key.Concat(moved).ToDictionary(o => o.Control, o => o.Position, Names.Comparer);
        foreach (var other in bike.Survey.Controls)
        {
            positions.TryAdd(other.Name, other.Rest);
        }

        var fed = bike.Paths.Joined(bike.Paths.Feed, t => t.IsClosed(positions));
        return fed.Any(t => bike.Loom.Part(t.Part) is { } part && Moves(part, control));
    }

    private Mark Tip(TerminalRef at) => bike.Mark(at) with { Instead = at == bike.Paths.Feed || at == bike.Paths.Return ? MeterCards.TakenOff : "" };
}

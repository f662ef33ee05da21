using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Checks;

/// <summary>A settled moment and the operations from rest that led there, each control at its last position.</summary>
internal sealed record Moment(ImmutableArray<Operation.Set> Operations, Settled Settled)
{
    /// <summary><c>lock at riding, light switch at head</c>; <c>everything at rest</c> when nothing was moved.</summary>
    public string InWords => Operations.IsEmpty ? "everything at rest" : string.Join(", ", Operations.Select(o => $"{o.Control} at {o.Position}"));
}

/// <summary>
/// The bike operated as an owner would who wants everything on: each control to where the supply gives most, then from there
/// each one elsewhere, and at last every button held as well. Not every state there is; what it finds is found, what it does not may be there.
/// </summary>
internal sealed class Tried
{
    private readonly Settler _settler;
    private readonly List<Moment> _moments = [];

    public Tried(Loom loom, bool coldStart = true)
    {
        Wiring = Wiring.Of(loom);
        _settler = new Settler(Wiring, coldStart);
        var now = Keep(new Moment([], _settler.Settle(Wiring.Start())));
        var places = Enumerable.Range(0, Wiring.Controls.Length).ToList();
        foreach (var control in places.Concat(places).Where(c => !Wiring.Controls[c].Momentary))
        {
            now = Hungriest(now, control);
        }

        foreach (var control in places)
        {
            foreach (var position in Others(now, control))
            {
                Move(now, control, position);
            }
        }

        foreach (var button in places.Where(c => Wiring.Controls[c].Momentary))
        {
            now = Hungriest(now, button);
        }
    }

    public Wiring Wiring { get; }

    /// <summary>In the order they were tried.</summary>
    public IReadOnlyList<Moment> Moments => _moments;

    /// <summary>The current of a link at a moment, the larger of two phases; 0 where no answer was found.</summary>
    public static double Amps(Moment moment, int link) => moment.Settled.Pictures.Select(p => Math.Abs(p.Amps[link])).DefaultIfEmpty(0).Max();

    /// <summary>What the design does after operations from rest.</summary>
    public static Settled After(Loom loom, IEnumerable<Operation.Set> operations, bool coldStart)
    {
        var wiring = Wiring.Of(loom);
        var settler = new Settler(wiring, coldStart);
        var settled = settler.Settle(wiring.Start());
        foreach (var operation in operations)
        {
            var control = Enumerable.Range(0, wiring.Controls.Length).First(c => wiring.Controls[c].Name == operation.Control);
            settled = settler.Settle(Time.Moved(settled.State, control, Wiring.PlaceOf(wiring.Controls[control], operation.Position)!.Value));
        }

        return settled;
    }

    // From a moment in which something opened nothing is tried further: what is dark then draws nothing.
    private Moment Hungriest(Moment now, int control) => Others(now, control).Select(p => Move(now, control, p)).Where(IsWhole).Prepend(now).MaxBy(Draws)!;

    private IEnumerable<int> Others(Moment now, int control) => Enumerable.Range(0, Wiring.Controls[control].Positions.Length).Where(p => p != now.Settled.State.Positions[control]);

    private Moment Move(Moment now, int control, int position)
    {
        var facts = Wiring.Controls[control];
        var others = now.Operations.RemoveAll(o => o.Control == facts.Name);
        return Keep(new Moment(
            Wiring.PlaceOf(facts, facts.Rest) == position ? others : others.Add(new Operation.Set(facts.Name, facts.Positions[position])),
            _settler.Settle(Time.Moved(now.Settled.State, control, position))));
    }

    private Moment Keep(Moment moment)
    {
        _moments.Add(moment);
        return moment;
    }

    private static bool IsWhole(Moment moment) => moment.Settled.Outcome == Outcome.Settled
        && !moment.Settled.State.Blown.AsSpan().Contains(true) && moment.Settled.State.Boxes.AsSpan().ToArray().All(b => !b.Tripped.AsSpan().Contains(true));

    private double Draws(Moment moment) => moment.Settled.Pictures.IsEmpty ? -1 : Wiring.Supplies.Sum(s => -moment.Settled.Pictures[0].Amps[s]);
}

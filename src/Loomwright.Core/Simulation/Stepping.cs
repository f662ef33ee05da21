using System.Collections.Immutable;
using Loomwright.Expressions;

namespace Loomwright.Simulation;

/// <summary>
/// The one thing that changes next, after a state was solved: cold lamps warm up or pull the supply down; something
/// trips; a fuse opens; boxes look at their inputs. Nothing of a run is kept here.
/// </summary>
internal sealed class Stepping(Wiring wiring, Electrics electrics, bool coldStart, Solved? known = null)
{
    /// <summary>A filament's inrush falls from ten or twelve times to twice its current in 3 to 5 ms (a public application note on lamp driving).</summary>
    public static readonly TimeSpan Inrush = TimeSpan.FromMilliseconds(5);

    /// <summary>A relay or solenoid has moved within some 10 to 20 ms (from memory): what opens later than that sees it moved.</summary>
    public static readonly TimeSpan RelayMoves = TimeSpan.FromMilliseconds(20);

    // Below both of these a cold lamp neither warms nor weighs on anything (judgement).
    internal const double WarmsAboveVolts = 0.5;
    internal const double WarmsAboveAmps = 0.01;

    private readonly DataLeads _leads = new(wiring);
    private readonly bool[] _cold = new bool[wiring.Links.Length];
    private readonly Func<BoxState, Row<bool>, BoxState>[] _rules =
        [.. wiring.Boxes.Select(box => new Func<BoxState, Row<bool>, BoxState>((before, inputs) => Step(box, before, inputs)))];

    /// <summary>The state after that change; the same state when nothing changes; null when a network found no answer or an input cannot be told.</summary>
    public State? Next(State state, Order order, ImmutableDictionary<InputPlace, bool> readAs, List<Happening> happenings, out InputPlace? undecided)
    {
        undecided = null;
        if (coldStart && FindCold(ref state))
        {
            return electrics.Solve(state, between: false, _cold)
                ? PulledDown(state, happenings) ?? Protection.Next(wiring, state, electrics.Amps, Inrush, happenings) ?? Warmed(state)
                : null;
        }

        return Protection.Next(wiring, state, electrics.Amps, RelayMoves, happenings)
            ?? MovedRelays(state, order, happenings)
            ?? Protection.Next(wiring, state, electrics.Amps, TimeSpan.MaxValue, happenings)
            ?? MovedFlashers(state, order)
            ?? Look(state, order, readAs, happenings, out undecided);
    }

    /// <summary>An input that reads otherwise than the state says, in what was solved last; null when all agree or cannot be told.</summary>
    public InputPlace? Disagrees(State state)
    {
        for (var b = 0; b < wiring.Boxes.Length; b++)
        {
            for (var i = 0; state.Boxes[b].Alive && i < wiring.Boxes[b].InputNodes.Length; i++)
            {
                if (Reading.Active(wiring, new InputPlace(b, i), state, electrics.Volts, _leads) is { } active && active != state.Boxes[b].Inputs[i])
                {
                    return new InputPlace(b, i);
                }
            }
        }

        return null;
    }

    /// <summary>Each relay as the currents solved last would have it: between pull-in and drop-out it stays as it is.</summary>
    public Row<bool> Relays(State state)
    {
        var relays = state.Relays;
        for (var r = 0; r < wiring.Relays.Length; r++)
        {
            var amps = 0.0;
            foreach (var coil in wiring.Relays[r].Coils)
            {
                amps += electrics.Amps[coil];
            }

            var facts = wiring.Relays[r].Facts;
            amps = facts.Clicks ? Math.Abs(amps) : amps;
            relays = relays.With(r, state.Relays[r] ? amps > facts.DropOutAmps : amps >= facts.PullInAmps);
        }

        return relays;
    }

    private State? MovedRelays(State state, Order order, List<Happening> happenings)
    {
        var relays = OneOf(state.Relays, Relays(state), order);
        if (relays == state.Relays)
        {
            return null;
        }

        for (var r = 0; r < relays.Length; r++)
        {
            if (relays[r] != state.Relays[r] && wiring.Relays[r].Facts.Clicks)
            {
                happenings.Add(new Happening.RelayMoved(wiring.Relays[r].Part, relays[r]));
            }
        }

        return state with { Relays = relays };
    }

    // Whether they have load enough to go on and off.
    private State? MovedFlashers(State state, Order order)
    {
        var flashers = state.Flashers;
        for (var f = 0; f < wiring.Flashers.Length; f++)
        {
            var place = wiring.Flashers[f];
            flashers = flashers.With(f, place.Link >= 0 && place.Facts.PerMinuteAt(Math.Abs(electrics.Amps[place.Link])) is not null);
        }

        flashers = OneOf(state.Flashers, flashers, order);
        return flashers == state.Flashers ? null : state with { Flashers = flashers };
    }

    // Marks the lamps that have just got current; those without are cold again.
    private bool FindCold(ref State state)
    {
        var any = false;
        var warm = state.Warm;
        for (var c = 0; c < wiring.Colds.Length; c++)
        {
            var link = wiring.Colds[c];
            var carries = electrics.SquareVolts[link] > WarmsAboveVolts * WarmsAboveVolts && Math.Abs(electrics.Amps[link]) > WarmsAboveAmps;
            _cold[link] = carries && !warm[c];
            any |= _cold[link];
            warm = carries ? warm : warm.With(c, false);
        }

        state = warm == state.Warm ? state : state with { Warm = warm };
        return any;
    }

    private State? PulledDown(State state, List<Happening> happenings)
    {
        var boxes = state.Boxes;
        for (var b = 0; b < wiring.Boxes.Length; b++)
        {
            var box = wiring.Boxes[b];
            if (state.Boxes[b].Alive && !Reading.Alive(box, electrics.Volts))
            {
                happenings.Add(new Happening.Reset(box.Part, Reading.SupplyVolts(box, electrics.Volts), [.. wiring.Sights.Where(s => _cold[s.Link]).Select(s => s.Name)]));
                boxes = boxes.With(b, BoxState.Lifeless(box.InputNodes.Length, box.OutputLinks.Length));
            }
        }

        return boxes == state.Boxes ? null : state with { Boxes = boxes };
    }

    private State Warmed(State state) =>
        state with { Warm = new Row<bool>([.. wiring.Colds.Select((link, c) => state.Warm[c] || _cold[link])]) };

    private State? Look(State state, Order order, ImmutableDictionary<InputPlace, bool> readAs, List<Happening> happenings, out InputPlace? undecided)
    {
        undecided = null;
        var boxes = state.Boxes;
        for (var n = 0; n < wiring.Boxes.Length; n++)
        {
            var b = order == Order.LastFirst ? wiring.Boxes.Length - 1 - n : n;
            var box = wiring.Boxes[b];
            var before = state.Boxes[b];
            if (!Reading.Alive(box, electrics.Volts))
            {
                if (before.Alive)
                {
                    happenings.Add(new Happening.Reset(box.Part, Reading.SupplyVolts(box, electrics.Volts), []));
                    boxes = boxes.With(b, BoxState.Lifeless(box.InputNodes.Length, box.OutputLinks.Length));
                }
            }
            else
            {
                var (inputs, unclear) = Reading.Inputs(wiring, b, state, electrics.Volts, _leads, readAs);
                if (unclear is not null)
                {
                    undecided = unclear;
                    return null;
                }

                var looked = OneOf(before.Inputs, inputs, order);
                boxes = boxes.With(b, known is null ? _rules[b](before, looked) : known.Step(b, before, looked, _rules[b]));
            }

            if (order != Order.Together && boxes != state.Boxes)
            {
                break;
            }
        }

        return boxes == state.Boxes ? state : state with { Boxes = boxes };
    }

    private static Row<bool> OneOf(Row<bool> before, Row<bool> now, Order order)
    {
        for (var n = 0; order != Order.Together && n < now.Length; n++)
        {
            var i = order == Order.LastFirst ? now.Length - 1 - n : n;
            if (now[i] != before[i])
            {
                return before.With(i, now[i]);
            }
        }

        return now;
    }

    private static BoxState Step(Box box, BoxState before, Row<bool> inputs)
    {
        var (levels, memory) = box.Rules.Step(before.Memory, name => box.InputOf.TryGetValue(name, out var i) && i >= 0 && inputs[i], static _ => "");
        if (!levels[0].On)
        {
            return BoxState.Lifeless(inputs.Length, before.Commands.Length) with { Alive = true, Inputs = inputs, Memory = box.Rules.Forget(memory) };
        }

        var commands = new Row<Level>(levels.RemoveAt(0));
        var tripped = before.Tripped;
        for (var o = 0; o < commands.Length; o++)
        {
            if (tripped[o] && TripEnds(box, o, commands[o], before.Inputs, inputs))
            {
                tripped = tripped.With(o, false);
            }
        }

        return new BoxState(true, true, memory, inputs, commands, tripped);
    }

    private static bool TripEnds(Box box, int output, Level command, Row<bool> before, Row<bool> now)
    {
        if (box.Facts.Outputs[output].TripEnds is not { } name)
        {
            return !command.On;
        }

        for (var i = 0; i < now.Length; i++)
        {
            if (Text.Names.Same(box.Facts.Inputs[i].Name, name))
            {
                return before[i] && !now[i];
            }
        }

        return !command.On;
    }
}

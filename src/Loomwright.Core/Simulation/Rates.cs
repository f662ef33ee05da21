using System.Collections.Immutable;
using Loomwright.Expressions;

namespace Loomwright.Simulation;

/// <summary>How often each thing seen goes on and off, when several flash at rates of their own.</summary>
internal static class Rates
{
    /// <summary>By place of the sight; null for what no flashing changes.</summary>
    /// <param name="steady">The picture with everything on.</param>
    /// <param name="between">Solves the state it is given between its flashes; null when it has no answer.</param>
    public static ImmutableArray<double?> Of(Wiring wiring, State state, Picture steady, Func<State, Picture?> between)
    {
        var rates = Sources(wiring, state, steady).Select(s => s.PerMinute).Distinct().ToList();
        if (rates.Count == 1)
        {
            return [.. Enumerable.Repeat<double?>(rates[0], wiring.Sights.Length)];
        }

        var alone = rates.Select(rate => (rate, picture: between(Only(wiring, state, steady, rate)))).Where(r => r.picture is not null).ToList();
        return [.. wiring.Sights.Select(sight => alone
            .Select(r => (r.rate, change: Change(sight, steady, r.picture!)))
            .Where(r => r.change > 0)
            .OrderByDescending(r => r.change)
            .Select(r => (double?)r.rate)
            .FirstOrDefault())];
    }

    private static IEnumerable<(double PerMinute, (int Box, int Output)? Output, int? Flasher)> Sources(Wiring wiring, State state, Picture steady)
    {
        for (var b = 0; b < wiring.Boxes.Length; b++)
        {
            var facts = wiring.Boxes[b].Facts;
            foreach (var o in Enumerable.Range(0, facts.Outputs.Length).Where(o => state.Boxes[b].Drive(o).Blinks))
            {
                var hurries = facts.Outputs[o].HurriesOnLampOut && Watching.LampOut(wiring.Boxes[b], state.Boxes[b], o, steady);
                yield return (facts.BlinksPerMinute * (hurries ? 2 : 1), (b, o), null);
            }
        }

        for (var f = 0; f < wiring.Flashers.Length; f++)
        {
            var place = wiring.Flashers[f];
            if (state.Flashers[f] && place.Facts.PerMinuteAt(Math.Abs(steady.Amps[place.Link])) is { } rate)
            {
                yield return (rate, null, f);
            }
        }
    }

    // The same state in which only what goes at that rate goes off between flashes.
    private static State Only(Wiring wiring, State state, Picture steady, double rate)
    {
        foreach (var other in Sources(wiring, state, steady).Where(s => s.PerMinute != rate).ToList())
        {
            state = other.Flasher is { } f
                ? state with { Flashers = state.Flashers.With(f, false) }
                : state with { Boxes = state.Boxes.With(other.Output!.Value.Box, Steady(state.Boxes[other.Output!.Value.Box], other.Output!.Value.Output)) };
        }

        return state;
    }

    private static BoxState Steady(BoxState box, int output) =>
        box with { Commands = box.Commands.With(output, box.Commands[output] with { ShareBetween = box.Commands[output].Share }) };

    private static double Change(SightPlace sight, Picture on, Picture between) => Math.Abs(on.SquareVolts[sight.Link] - between.SquareVolts[sight.Link]);
}

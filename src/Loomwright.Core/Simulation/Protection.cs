using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>What opens when too much flows: outputs that trip, fuses. One at a time.</summary>
internal static class Protection
{
    /// <summary>The state after the next thing opens that opens within <paramref name="within"/>; null when nothing does. Trips come before fuses.</summary>
    public static State? Next(Wiring wiring, State state, double[] amps, TimeSpan within, List<Happening> happenings) =>
        Trip(wiring, state, amps, within, happenings) ?? Blow(wiring, state, amps, within, happenings);

    private static State? Trip(Wiring wiring, State state, double[] amps, TimeSpan within, List<Happening> happenings)
    {
        (TimeSpan After, int Box, int Output)? soonest = null;
        for (var b = 0; b < wiring.Boxes.Length; b++)
        {
            var facts = wiring.Boxes[b].Facts;
            var total = 0.0;
            for (var o = 0; o < facts.Outputs.Length; o++)
            {
                var drive = state.Boxes[b].Drive(o);
                if (wiring.Boxes[b].OutputLinks[o] is >= 0 and var link && drive.On)
                {
                    var flows = Math.Abs(amps[link]);
                    total += flows;
                    var after = facts.Outputs[o].TripsAfter;
                    var stands = drive is { Blinks: true, ShareBetween: 0 } && HalfPeriod(facts) < within ? HalfPeriod(facts) : within;
                    if (flows > facts.Outputs[o].LimitAmps && after <= stands && (soonest is null || after < soonest.Value.After))
                    {
                        soonest = (after, b, o);
                    }
                }
            }

            if (total > facts.TotalLimitAmps && facts.TotalTripsAfter <= within && (soonest is null || facts.TotalTripsAfter < soonest.Value.After))
            {
                happenings.Add(new Happening.TotalTripped(wiring.Boxes[b].Part, total, facts.TotalLimitAmps.Value));
                return With(state, b, AllOn(state.Boxes[b]));
            }
        }

        if (soonest is not { } trip)
        {
            return null;
        }

        var place = wiring.Boxes[trip.Box];
        var output = place.Facts.Outputs[trip.Output];
        happenings.Add(new Happening.OutputTripped(place.Part, output.Terminal, output.Name, Math.Abs(amps[place.OutputLinks[trip.Output]]), output.LimitAmps!.Value));
        return With(state, trip.Box, state.Boxes[trip.Box].Tripped.With(trip.Output, true));
    }

    private static State? Blow(Wiring wiring, State state, double[] amps, TimeSpan within, List<Happening> happenings)
    {
        (double Seconds, int Fuse)? soonest = null;
        for (var f = 0; f < wiring.Fuses.Length; f++)
        {
            if (!state.Blown[f] && wiring.Fuses[f].Cycle is null
                && wiring.Fuses[f].Band.LikelySeconds(Math.Abs(amps[wiring.Fuses[f].Link]) / wiring.Fuses[f].RatingAmps) is { } seconds
                && seconds <= within.TotalSeconds
                && (soonest is null || seconds < soonest.Value.Seconds))
            {
                soonest = (seconds, f);
            }
        }

        if (soonest is not { } blown)
        {
            return null;
        }

        var fuse = wiring.Fuses[blown.Fuse];
        happenings.Add(new Happening.FuseOpened(fuse.Part, fuse.Button is not null, Math.Abs(amps[fuse.Link]), fuse.RatingAmps));
        return state with { Blown = state.Blown.With(blown.Fuse, true) };
    }

    // A flash lasts half a period: a limit that stands longer than that never trips on it.
    private static TimeSpan HalfPeriod(Controller facts) => TimeSpan.FromMinutes(0.5 / facts.BlinksPerMinute);

    private static State With(State state, int box, Row<bool> tripped) =>
        state with { Boxes = state.Boxes.With(box, state.Boxes[box] with { Tripped = tripped }) };

    private static Row<bool> AllOn(BoxState box) => new([.. Enumerable.Range(0, box.Commands.Length).Select(o => box.Tripped[o] || box.Commands[o].On)]);
}

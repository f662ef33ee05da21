using Loomwright.Network;
using Loomwright.Oracle;
using Loomwright.Parts;

namespace Loomwright.Tests.Network;

/// <summary>What the solver promises beside the published circuits.</summary>
public sealed class SolverTests
{
    /// <summary>Check value by hand: 12 V over 30 + 15 + 15 Ω is 0.2 A.</summary>
    [Fact]
    public void A_lost_common_ground_puts_its_lamps_in_series_through_each_other()
    {
        var solver = Solved(4, new(1, 0, new FixedVoltage(12)), new(1, 2, new Ohms(30)), new(2, 3, new Ohms(15)), new(3, 0, new Ohms(15)), new(2, 0, new Open()));

        Close(0.2, solver.Amps[1]);
        Close(6, solver.Volts(1, 2));
        Close(3, solver.Volts(2, 3));
        Close(3, solver.Volts(3, 0));
    }

    [Fact]
    public void Two_ideal_voltage_sources_side_by_side_are_a_structural_error_even_when_equal()
    {
        var outcome = new Solver(new(2, [new(1, 0, new FixedVoltage(12)), new(1, 0, new Ohms(5)), new(1, 0, new FixedVoltage(12))])).Solve();

        Assert.Equal([0, 2], Assert.IsType<Outcome.StructuralError>(outcome).Branches);
    }

    [Fact]
    public void A_ring_of_ideal_voltage_sources_names_its_members_and_no_other()
    {
        var outcome = new Solver(new(5,
        [
            new(1, 0, new FixedVoltage(1)), new(2, 1, new FixedVoltage(1)), new(3, 2, new FixedVoltage(1)), new(1, 3, new FixedVoltage(-2)), new(4, 4, new FixedVoltage(0)),
        ])).Solve();

        Assert.Equal([1, 2, 3, 4], Assert.IsType<Outcome.StructuralError>(outcome).Branches);
    }

    [Fact]
    public void A_current_source_into_an_open_node_is_a_structural_error()
    {
        var outcome = new Solver(new(3, [new(1, 0, new Ohms(5)), new(0, 2, new FixedCurrent(1)), new(2, 1, new Open())])).Solve();

        Assert.Equal([1], Assert.IsType<Outcome.StructuralError>(outcome).Branches);
    }

    [Fact]
    public void A_current_source_within_a_cut_off_part_is_no_error_and_the_part_rests_at_its_lowest_node()
    {
        var solver = Solved(3, new(1, 2, new Ohms(5)), new(2, 1, new FixedCurrent(2)));

        Close(0, solver.Potentials[1]);
        Close(-10, solver.Potentials[2]);
        Assert.Equal([false, true, true], solver.Floating.ToArray());
    }

    [Fact]
    public void Ideal_sources_in_a_row_carry_the_load_current_and_lift_each_node_by_their_own_volts()
    {
        var solver = Solved(4, new(1, 0, new FixedVoltage(6)), new(2, 1, new FixedVoltage(6)), new(2, 3, new FixedVoltage(0)), new(3, 0, new Ohms(4)));

        Assert.Equal([0, 6, 12, 12], solver.Potentials.ToArray());
        Assert.Equal([-3, -3, 3, 3], solver.Amps.ToArray());
    }

    /// <summary>
    /// Batteries taken for the straight stretch they rest on, against the same batteries as curves that bend: the same
    /// potentials, delivering or charged, one of them or several that charge each other.
    /// </summary>
    [Fact]
    public void A_battery_taken_for_its_straight_stretch_rests_where_its_bent_curve_does()
    {
        var charged = 0;
        for (ulong seed = 0; seed < 400; seed++)
        {
            var made = RandomNetwork.Make(seed, bends: seed % 2 == 1);
            var stretched = new Solver(With(made, cells => cells));
            var bent = new Solver(With(made, cells => new Bent(cells)));
            Assert.IsType<Outcome.Solved>(stretched.Solve());
            Assert.IsType<Outcome.Solved>(bent.Solve());
            for (var n = 0; n < made.NodeCount; n++)
            {
                Assert.Equal(bent.Potentials[n], stretched.Potentials[n], 1e-9 * (1 + Math.Abs(bent.Potentials[n])));
            }

            for (var b = 0; b < made.Branches.Length; b++)
            {
                charged += made.Branches[b].Curve is Source && stretched.Amps[b] > 1e-3 ? 1 : 0;
            }
        }

        Assert.True(charged > 100, FormattableString.Invariant($"{charged} batteries were charged"));

        static Circuit With(Circuit circuit, Func<Cells, Curve> curve) =>
            new(circuit.NodeCount, [.. circuit.Branches.Select(b => b.Curve is Source s ? b with { Curve = curve(new Cells(s.EmfVolts, s.SeriesOhms, 40 * s.SeriesOhms)) } : b)]);
    }

    /// <summary>A chain of milliohms between two open contacts: every node stands halfway but for its milliohms, to 3e−14 V.</summary>
    [Fact]
    public void Nodes_tied_by_milliohms_and_hung_on_open_contacts_keep_their_digits()
    {
        const int chain = 50;
        List<Branch> branches = [new(1, 0, new FixedVoltage(12)), new(1, 2, new Ohms(1e9)), new(chain + 1, 0, new Ohms(1e9))];
        branches.AddRange(Enumerable.Range(2, chain - 1).Select(n => new Branch(n, n + 1, new Ohms(1e-3))));
        var solver = Solved(chain + 2, [.. branches]);

        Assert.All(Enumerable.Range(0, chain), k =>
            Assert.Equal(12 * (1e9 + ((chain - 1 - k) * 1e-3)) / (2e9 + ((chain - 1) * 1e-3)), solver.Potentials[k + 2], 3e-14));
        Close(12 / (2e9 + ((chain - 1) * 1e-3)), solver.Amps[^1]);
        Assert.All(solver.Floating[2..].ToArray(), Assert.True);
    }

    /// <summary>Where a plain difference of potentials is off by 1e−4: 13.8 V across 1 µΩ and 10 MΩ.</summary>
    [Fact]
    public void The_current_through_a_micro_ohm_is_that_of_the_megohm_in_series()
    {
        var solver = Solved(3, new(1, 0, new FixedVoltage(13.8)), new(1, 2, new Ohms(1e-6)), new(2, 0, new Ohms(1e7)));

        Close(13.8 / (1e7 + 1e-6), solver.Amps[1]);
        Close(13.8 / (1e7 + 1e-6), solver.Amps[2]);
    }

    /// <summary>Open contact 1e−9 S, meter 10 MΩ, 12.6 V: 12.6/(1 + 100) = 0.1248 V.</summary>
    [Fact]
    public void A_meter_behind_an_open_contact_shows_its_small_reading_and_the_node_floats()
    {
        var solver = Solved(3, new(1, 0, new Source(12.6, 0.01)), new(1, 2, new Ohms(Ohms.OpenContactOhms)), new(2, 0, new Ohms(1e7)));

        Assert.Equal(0.1248, solver.Potentials[2], 5e-5);
        Assert.Equal([false, false, true], solver.Floating.ToArray());
    }

    [Fact]
    public void A_node_behind_a_diode_floats_only_while_the_diode_blocks()
    {
        var blocked = Solved(3, new(1, 0, new Source(12, 0.01)), new(2, 1, Diode.Silicon), new(2, 0, new Ohms(1e9)));
        var conducting = Solved(3, new(1, 0, new Source(12, 0.01)), new(1, 2, Diode.Silicon), new(2, 0, new Ohms(100)));

        Assert.True(blocked.Floating[2]);
        Assert.False(conducting.Floating[2]);
    }

    [Fact]
    public void Any_curve_put_in_later_gives_what_a_fresh_circuit_gives()
    {
        var dice = new Dice(11);
        for (var round = 0; round < 60; round++)
        {
            var circuit = RandomNetwork.OfSize(dice, 3 + dice.Below(25), bends: round % 2 == 1);
            var solver = new Solver(circuit);
            solver.Solve();
            var branches = circuit.Branches;
            for (var change = 0; change < 8; change++)
            {
                var b = dice.Below(branches.Length);
                branches = branches.SetItem(b, branches[b] with { Curve = Other(dice, branches[b].Curve) });
                solver.SetCurve(b, branches[b].Curve);
                var fresh = new Solver(new(circuit.NodeCount, branches));

                var outcome = fresh.Solve();
                Assert.Equal(outcome.GetType(), solver.Solve().GetType());
                if (outcome is Outcome.Solved)
                {
                    Assert.Equal(fresh.Floating.ToArray(), solver.Floating.ToArray());
                    AssertSame(fresh.Potentials, solver.Potentials);
                    AssertSame(fresh.Amps, solver.Amps);
                }
            }
        }
    }

    [Fact]
    public void The_last_lamp_taken_out_leaves_nothing_of_itself_behind()
    {
        var solver = Solved(3, new(1, 0, new Source(12, 1)), new(1, 2, new Ohms(1)), new(2, 0, new Filament(21, 12)), new(2, 0, new Ohms(1e3)));

        solver.SetCurve(2, new Open());
        solver.Solve();

        Assert.Equal(2, solver.Steps);
        Close(12.0 / 1002, solver.Amps[1]);
    }

    [Fact]
    public void A_steady_solve_allocates_nothing()
    {
        var circuit = RandomNetwork.OfSize(new Dice(5), 80, bends: true);
        var solver = new Solver(circuit);
        var contact = Enumerable.Range(0, circuit.Branches.Length).First(b => circuit.Branches[b].Curve is Ohms);
        Curve[] curves = [new Ohms(0.02), new Ohms(Ohms.OpenContactOhms), Diode.Silicon];
        Turn(3);

        var before = GC.GetAllocatedBytesForCurrentThread();
        Turn(30);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Turn(int times)
        {
            for (var k = 0; k < times; k++)
            {
                solver.SetCurve(contact, curves[k % curves.Length]);
                solver.Solve(warm: k % 2 == 0);
                _ = solver.Floating[1];
            }
        }
    }

    [Fact]
    public void A_straight_network_takes_two_steps_and_one_when_nothing_changed()
    {
        var solver = new Solver(RandomNetwork.OfSize(new Dice(8), 150, bends: false));

        solver.Solve();
        Assert.Equal(2, solver.Steps);
        solver.Solve();
        Assert.Equal(1, solver.Steps);
    }

    [Fact]
    public void The_operating_point_is_where_the_content_of_all_elements_is_least()
    {
        var dice = new Dice(3);
        for (var round = 0; round < 40; round++)
        {
            var circuit = RandomNetwork.OfSize(dice, 2 + dice.Below(20), bends: true);
            var solver = new Solver(circuit);
            Assert.IsType<Outcome.Solved>(solver.Solve());
            var rest = solver.Potentials.ToArray();
            var least = Content(circuit, rest);
            for (var node = 1; node < rest.Length; node++)
            {
                if (!circuit.Branches.Any(b => b.Curve is FixedVoltage && (b.From == node || b.To == node)))
                {
                    rest[node] += 0.01;
                    Assert.True(Content(circuit, rest) >= least - (1e-12 * Math.Abs(least)), "a lower point beside it");
                    rest[node] -= 0.01;
                }
            }
        }
    }

    private static double Content(Circuit circuit, double[] volts) =>
        circuit.Branches.Sum(branch => branch.Curve.ContentWatts(volts[branch.From] - volts[branch.To]));

    private static Curve Other(Dice dice, Curve curve) => curve switch
    {
        FixedVoltage when dice.Chance(0.5) => new FixedVoltage(dice.Even(-12, 12)),
        _ when dice.Chance(0.2) => new Open(),
        _ when dice.Chance(0.1) => new FixedCurrent(dice.Even(-1, 1)),
        _ => dice.TreeCurve(bends: dice.Chance(0.5)),
    };

    private static void AssertSame(ReadOnlySpan<double> expected, ReadOnlySpan<double> actual)
    {
        for (var k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], actual[k], 1e-9 + (1e-9 * Math.Abs(expected[k])));
        }
    }

    private static Solver Solved(int nodes, params Branch[] branches)
    {
        var solver = new Solver(new(nodes, [.. branches]));
        Assert.IsType<Outcome.Solved>(solver.Solve());
        Assert.InRange(solver.ResidualAmps, 0, 1e-9);
        return solver;
    }

    private static void Close(double expected, double actual) => Assert.Equal(expected, actual, 1e-12 * Math.Abs(expected));

    private sealed record Bent(Curve Inner) : Curve
    {
        public override CurvePoint At(double volts) => Inner.At(volts);

        public override double ContentWatts(double volts) => Inner.ContentWatts(volts);
    }
}

using System.Globalization;
using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Tests.Network;

/// <summary>
/// Formula examples of the same handbooks (sources in worked-examples/index.csv), each put up as a small network where
/// it is one. What a network does not decide is listed by name, so that no row is passed over in silence.
/// </summary>
public sealed class FormulaTests
{
    /// <summary>Derating, choice of size, resistance from material and temperature, batteries over time, flash rate: not the network's.</summary>
    private static readonly string[] OfOtherEngines =
    [
        "FAA-09", "FAA-10a", "FAA-10b", "FAA-12a", "FAA-12b", "FAA-13a", "LEC-F1a", "LEC-F1b", "LEC-F4", "LEC-F6", "LEC-F9",
        "UPH-F1", "UPH-F2", "UPH-F5", "CPH-F1", "MSC-F2", "MSC-F4b", "MSC-F5", "MSC-F7a", "NHT-01",
    ];

    private static IReadOnlyList<PublishedRow> Rows => PublishedTable.Read("worked-examples/formulas.csv").Rows;

    public static TheoryData<string> Covered() => [.. Rows.Select(row => row["id"]).Except(OfOtherEngines)];

    [Theory]
    [MemberData(nameof(Covered))]
    public void A_formula_example_put_up_as_a_network_gives_its_value(string id)
    {
        var row = Rows.Single(r => r["id"] == id);
        var computed = row.Number("computed_value");
        var value = Value(row["formula"], Inputs(row["inputs"]), computed);

        Assert.Equal(computed, value, 1e-9 + (1e-6 * Math.Abs(computed)));
        if (row["verdict"] == "agrees")
        {
            Assert.Equal(row.Number("published_value"), value, row.Number("published_abs_tol") + (1e-9 * Math.Abs(computed)));
        }
        else if (row["verdict"] == "source_wrong")
        {
            Assert.True(Math.Abs(row.Number("published_value") - value) > row.Number("published_abs_tol"), "the misprint came out again");
        }
    }

    [Fact]
    public void Every_formula_left_to_another_engine_is_in_the_table() =>
        Assert.Empty(OfOtherEngines.Except(Rows.Select(row => row["id"])));

    private static double Value(string formula, Dictionary<string, double> x, double computed) => formula switch
    {
        "dU = r*L*I" => Pushed(x["I_A"], x["r_ohm_per_m"] * x["L_m"]).Volts,
        "dU = 2*L*r*I" => Pushed(x["I_A"], x["r_ohm_per_m"] * x["L_m"], x["r_ohm_per_m"] * x["L_m"]).Volts,
        "dU = R*I" => Pushed(x["I_A"], x["R_ohm"]).Volts,
        "P = R*I^2" => Pushed(x["I_A"], x["R_ohm"]).Watts,
        "P = I^2*rho*L/(pi/4*d^2)" => Pushed(x["I_A"], x["rho_ohm_m"] * x["L_m"] / (Math.PI / 4 * x["d_m"] * x["d_m"])).Watts,
        "P = U^2/Rcold" => Fed(x["U_V"], new Ohms(x["Rcold_ohm"])).Watts,
        "I = U/Rcold" => Fed(x["U_V"], new Ohms(x["Rcold_ohm"])).Amps,
        "R = U/I" => Fed(x["U_V"], new FixedCurrent(x["I_A"])).Ohms,
        "R = R1/n" => Fed(1, [.. Enumerable.Repeat(new Ohms(x["R1_ohm"]), (int)x["n"])]).Ohms,
        "R = (U-Uf)/I" => Dropped(x["U_V"], x["Uf_V"], x["I_A"]).Ohms,
        "P = (U-Uf)*I" => Dropped(x["U_V"], x["Uf_V"], x["I_A"]).Watts,

        // A battery with the printed answer inside must sag by the printed drop when the load grows by the printed step.
        "r = dU/dI" => computed * x["dU_V"] / (Loaded(0, computed) - Loaded(x["dI_A"], computed)),
        _ => throw new InvalidDataException(formula),
    };

    private static Reading Pushed(double amps, params double[] ohms)
    {
        var branches = ohms.Select((r, k) => new Branch(k + 1 == ohms.Length ? 0 : k + 1, k == 0 ? ohms.Length : k, new Ohms(r)));
        var solver = Solved(ohms.Length + 1, [new Branch(ohms.Length, 0, new FixedCurrent(amps)), .. branches]);
        return new(-solver.Potentials[ohms.Length], amps);
    }

    private static Reading Fed(double volts, params Curve[] loads)
    {
        var solver = Solved(2, [new Branch(1, 0, new FixedVoltage(volts)), .. loads.Select(load => new Branch(1, 0, load))]);
        return new(volts, -solver.Amps[0]);
    }

    private static Reading Dropped(double feedVolts, double forwardVolts, double amps)
    {
        var solver = Solved(3, [new(1, 0, new FixedVoltage(feedVolts)), new(2, 0, new FixedVoltage(forwardVolts)), new(1, 2, new FixedCurrent(amps))]);
        return new(solver.Volts(1, 2), solver.Amps[1]);
    }

    private static double Loaded(double amps, double ohms) =>
        Solved(2, [new(1, 0, new Source(12, ohms)), new(1, 0, new FixedCurrent(amps))]).Potentials[1];

    private static Solver Solved(int nodes, Branch[] branches)
    {
        var solver = new Solver(new(nodes, [.. branches]));
        Assert.IsType<Outcome.Solved>(solver.Solve());
        return solver;
    }

    private static Dictionary<string, double> Inputs(string text) => text.Split(';').Select(pair => pair.Split('='))
        .ToDictionary(pair => pair[0], pair => double.Parse(pair[1], CultureInfo.InvariantCulture), StringComparer.Ordinal);

    private readonly record struct Reading(double Volts, double Amps)
    {
        public double Watts => Volts * Amps;

        public double Ohms => Volts / Amps;
    }
}

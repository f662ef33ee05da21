using Loomwright.Network;

namespace Loomwright.Tests.Network;

/// <summary>
/// Worked examples of open textbooks and government handbooks; each circuit's source stands in worked-examples/index.csv.
/// The computed values are exact rational solutions, checked with a general circuit simulator.
/// </summary>
public sealed class PublishedTests
{
    private const string Folder = "worked-examples";

    public static TheoryData<string, string> Circuits()
    {
        var data = new TheoryData<string, string>();
        foreach (var folder in new[] { PublishedTable.PathOf(Folder), Environment.GetEnvironmentVariable("LOOMWRIGHT_WORKED_EXAMPLES") })
        {
            if (!string.IsNullOrEmpty(folder))
            {
                foreach (var rows in PublishedCircuit.Rows(Path.Combine(folder, "circuits.csv")))
                {
                    data.Add(folder == PublishedTable.PathOf(Folder) ? Folder : folder, rows.Key);
                }
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Circuits))]
    public void A_published_circuit_gives_its_exact_values_and_the_printed_ones_within_their_last_digit(string folder, string id)
    {
        folder = folder == Folder ? PublishedTable.PathOf(Folder) : folder;
        var circuit = new PublishedCircuit(PublishedCircuit.Rows(Path.Combine(folder, "circuits.csv")).Single(rows => rows.Key == id));
        var answers = PublishedTable.ReadFile(Path.Combine(folder, "answers.csv")).Rows.Where(row => row["id"] == id).ToList();

        Assert.IsType<Outcome.Solved>(circuit.Outcome);
        Assert.InRange(circuit.Solver.ResidualAmps, 0, circuit.Bends ? 1e-6 : 1e-9);
        Assert.NotEmpty(answers);
        Assert.All(answers, answer =>
        {
            var value = circuit.Value(answer["quantity"]);
            var computed = answer.Number("computed_value");
            Assert.Equal(computed, value, 1e-9 + (1e-6 * Math.Abs(computed)));
            if (answer["verdict"] == "agrees")
            {
                // Half the last printed digit may be met exactly; 1e-9 of the value lets the last bit through.
                Assert.Equal(answer.Number("published_value"), value, answer.Number("published_abs_tol") + (1e-9 * Math.Abs(computed)));
            }
            else if (answer["verdict"] == "source_wrong")
            {
                Assert.True(Math.Abs(answer.Number("published_value") - value) > answer.Number("published_abs_tol"), "the misprint came out again");
            }
        });
    }

    public static TheoryData<string> LampCircuits() =>
        [.. PublishedCircuit.Rows(PublishedTable.PathOf("10-nonlinear-lamp-circuits.csv")).Select(rows => rows.Key)];

    /// <summary>Answers of two methods that agree (a general circuit simulator; a Newton nodal solution), same lamp law, all rows.</summary>
    [Theory]
    [MemberData(nameof(LampCircuits))]
    public void Filament_lamps_share_current_as_the_reference_solution_says(string id)
    {
        var circuit = new PublishedCircuit(PublishedCircuit.Rows(PublishedTable.PathOf("10-nonlinear-lamp-circuits.csv")).Single(rows => rows.Key == id));
        var answers = PublishedTable.Read("10-nonlinear-lamp-answers.csv").Rows.Where(row => row["id"] == id).ToList();

        Assert.IsType<Outcome.Solved>(circuit.Outcome);
        Assert.InRange(circuit.Solver.ResidualAmps, 0, 1e-6);
        Assert.NotEmpty(answers);
        Assert.All(answers, answer =>
        {
            var computed = answer.Number("computed_value");
            Assert.Equal(computed, circuit.Value(answer["quantity"]), 1e-6 * Math.Abs(computed));
        });
    }
}

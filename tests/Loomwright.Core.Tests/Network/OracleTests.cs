using Loomwright.Oracle;

namespace Loomwright.Tests.Network;

/// <summary>Random networks of all element kinds against ngspice and against exact fractions; 20,000 of them in <c>./long networks</c>.</summary>
public sealed class OracleTests
{
    private const int Count = 200;

    [Fact]
    public void Random_networks_come_out_as_a_general_simulator_and_exact_fractions_say()
    {
        var all = Enumerable.Range(1, Count).Select(seed => Comparison.Of((ulong)seed, exactAlways: true)).ToList();

        Assert.Empty(all.Where(c => c.Wrong.Count > 0).Select(c => FormattableString.Invariant($"seed {c.Seed}: {string.Join("; ", c.Wrong.Take(3))}")));
        Assert.Contains(all, c => c.Bends && c.FloatingNodes > 0);
        if (Ngspice.IsInstalled)
        {
            Assert.InRange(all.Count(c => !c.SimulatorValid), 0, Count / 50);
        }
        else
        {
            TestContext.Current.AddWarning("libngspice0 is not installed: only exact fractions and residuals were checked");
        }
    }

    [Fact]
    public void The_exact_oracle_solves_a_divider_it_was_not_written_for()
    {
        var circuit = new Loomwright.Network.Circuit(3,
        [
            new(1, 0, new Loomwright.Parts.FixedVoltage(12)),
            new(1, 2, new Loomwright.Parts.Ohms(2)),
            new(2, 0, new Loomwright.Parts.Ohms(4)),
        ]);

        Assert.Equal([0, 12, 8], ExactSolution.Potentials(circuit, [.. circuit.Branches.Select(b => b.Curve.Straight ?? default)]));
    }
}

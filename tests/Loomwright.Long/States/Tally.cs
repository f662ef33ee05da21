using Loomwright.Oracle;
using Loomwright.Simulation;

namespace Loomwright.Long.States;

/// <summary>What came of many random states of one machine.</summary>
internal sealed class Tally(RandomBike bike)
{
    /// <summary>What may be left of a current sum, A.</summary>
    public const double AllowedAmps = 1e-6;

    private readonly HashSet<Row<int>> _settings = [];
    private readonly HashSet<string> _faults = new(StringComparer.Ordinal);

    public RandomBike Bike { get; } = bike;

    public int States { get; private set; }

    public Dictionary<Outcome, int> Outcomes { get; } = Enum.GetValues<Outcome>().ToDictionary(o => o, _ => 0);

    public int Flashing { get; private set; }

    public double LargestResidualAmps { get; private set; }

    public int Compared { get; private set; }

    public List<Comparison> Circuits { get; } = [];

    public int Settings => _settings.Count;

    public int Faults => _faults.Count;

    /// <summary>Everything that must not be: unsolved states, current sums too large, other answers than the simulator's.</summary>
    public List<string> Wrong { get; } = [];

    public void Add(RandomState state, bool compare)
    {
        States++;
        Outcomes[state.Settled.Outcome]++;
        Flashing += state.Settled is { Outcome: Outcome.Settled, Pictures.Length: > 1 } ? 1 : 0;
        _settings.Add(state.Settled.State.Positions);
        if (state.Fault is { } fault)
        {
            _faults.Add(fault.ToString());
        }

        LargestResidualAmps = Math.Max(LargestResidualAmps, state.ResidualAmps);
        if (state.Settled.Outcome == Outcome.Unsolved)
        {
            Wrong.Add($"{state}: unsolved");
        }

        if (!(state.ResidualAmps <= AllowedAmps))
        {
            Wrong.Add(FormattableString.Invariant($"{state}: {state.ResidualAmps:E1} A left over"));
        }

        if (compare)
        {
            Compare(state);
        }
    }

    private void Compare(RandomState state)
    {
        Compared++;
        var circuits = state.Compared().ToList();
        Circuits.AddRange(circuits);
        Wrong.AddRange(state.NotAsSolved().Concat(circuits.Where(c => c.Wrong.Count > 0).Select(c => $"{state}: {string.Join("; ", c.Wrong.Take(3))}")));
    }
}

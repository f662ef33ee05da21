using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Long.States;

/// <summary>Goes through random states of the two whole examples, by turns.</summary>
internal static class Visits
{
    private static readonly string[] Machines = ["kittiwake", "sandpiper"];

    /// <summary>What came of it, machine by machine.</summary>
    /// <param name="firstSeed">The first seed; one more for each row of states.</param>
    /// <param name="states">How many states, full rows.</param>
    /// <param name="comparedOf">One state in the rows of so many seeds is held against the general simulator.</param>
    /// <param name="read">Gives an example file by its path.</param>
    /// <param name="progress">Told how many are done.</param>
    public static IReadOnlyList<Tally> Of(ulong firstSeed, int states, int comparedOf, Func<string, string> read, Action<int>? progress = null)
    {
        var bikes = Machines.Select(m => new RandomBike(m, DesignFile.Read(new SourceText(m, read($"examples/{m}/{m}.loom.yaml"))).Loom!)).ToArray();
        var tallies = bikes.Select(b => new Tally(b)).ToArray();
        for (var seed = 0; seed < states / RandomBike.StatesOfASeed; seed++)
        {
            var (round, place) = (seed / comparedOf, 0);
            foreach (var state in bikes[seed % bikes.Length].Of(firstSeed + (ulong)seed))
            {
                // Both machines and every place in a row get their turn.
                var compare = seed % comparedOf == round % comparedOf && place == round / bikes.Length % RandomBike.StatesOfASeed;
                tallies[seed % bikes.Length].Add(state, compare);
                place++;
            }

            progress?.Invoke((seed + 1) * RandomBike.StatesOfASeed);
        }

        return tallies;
    }
}

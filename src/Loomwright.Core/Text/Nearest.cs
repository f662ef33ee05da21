namespace Loomwright.Text;

/// <summary>Finds the name a person most likely meant.</summary>
public static class Nearest
{
    /// <summary>The candidate with the fewest slips of the finger from <paramref name="name"/>, or null when none is near (more than a third of it wrong).</summary>
    public static string? To(string name, IEnumerable<string> candidates)
    {
        var sought = Names.Fold(name);
        string? best = null;
        var bestSlips = Math.Max(1, sought.Length / 3) + 1;
        foreach (var candidate in candidates)
        {
            var slips = Slips(sought, Names.Fold(candidate));
            if (slips < bestSlips)
            {
                (best, bestSlips) = (candidate, slips);
            }
        }

        return best;
    }

    /// <summary>Letters added, left out, changed, or exchanged with their neighbour.</summary>
    private static int Slips(string a, string b)
    {
        var twoBack = new int[b.Length + 1];
        var oneBack = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            oneBack[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = oneBack[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                row[j] = Math.Min(change, Math.Min(oneBack[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], twoBack[j - 2] + 1);
                }
            }

            (twoBack, oneBack, row) = (oneBack, row, twoBack);
        }

        return oneBack[b.Length];
    }
}

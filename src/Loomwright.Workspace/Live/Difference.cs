using System.Collections.Immutable;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Live;

/// <summary>How one text becomes another, as replaced stretches: by lines first, then without what a stretch's ends have in common.</summary>
internal static class Difference
{
    // Above this many line pairs the stretch between the common ends is taken as one; 4 million are compared in some milliseconds.
    private const long MostPairs = 4_000_000;

    public static ImmutableArray<Replacement> Between(string before, string after)
    {
        var (a, b) = (Lines(before), Lines(after));
        var head = 0;
        while (head < a.Count && head < b.Count && a[head] == b[head])
        {
            head++;
        }

        var tail = 0;
        while (tail < a.Count - head && tail < b.Count - head && a[^(tail + 1)] == b[^(tail + 1)])
        {
            tail++;
        }

        var found = ImmutableArray.CreateBuilder<Replacement>();
        var start = a.Take(head).Sum(l => l.Length);
        foreach (var (removed, added, same) in Runs(a[head..^tail], b[head..^tail]))
        {
            if (removed.Length + added.Length > 0)
            {
                found.Add(Trimmed(start, removed, added));
            }

            start += removed.Length + same.Length;
        }

        return found.ToImmutable();
    }

    private static Replacement Trimmed(int start, string removed, string added)
    {
        var shorter = Math.Min(removed.Length, added.Length);
        var head = removed.AsSpan().CommonPrefixLength(added);
        var tail = 0;
        while (tail < shorter - head && removed[^(tail + 1)] == added[^(tail + 1)])
        {
            tail++;
        }

        return new Replacement(new Span(start + head, removed.Length - head - tail), added[head..^tail]);
    }

    // What is taken away, what is put in its place, and what then stays the same, over and over.
    private static IEnumerable<(string Removed, string Added, string Same)> Runs(List<string> a, List<string> b)
    {
        if ((long)a.Count * b.Count > MostPairs)
        {
            yield return (string.Concat(a), string.Concat(b), "");
            yield break;
        }

        var common = Common(a, b);
        for (int i = 0, j = 0; i < a.Count || j < b.Count;)
        {
            var (fromI, fromJ) = (i, j);
            while ((i < a.Count || j < b.Count) && !(i < a.Count && j < b.Count && a[i] == b[j]))
            {
                if (j == b.Count || (i < a.Count && common[i + 1, j] >= common[i, j + 1]))
                {
                    i++;
                }
                else
                {
                    j++;
                }
            }

            var (sameI, sameJ) = (i, j);
            while (i < a.Count && j < b.Count && a[i] == b[j])
            {
                (i, j) = (i + 1, j + 1);
            }

            yield return (string.Concat(a[fromI..sameI]), string.Concat(b[fromJ..sameJ]), string.Concat(a[sameI..i]));
        }
    }

    // The length of the longest common run of lines from each pair of places on.
    private static int[,] Common(List<string> a, List<string> b)
    {
        var common = new int[a.Count + 1, b.Count + 1];
        for (var i = a.Count - 1; i >= 0; i--)
        {
            for (var j = b.Count - 1; j >= 0; j--)
            {
                common[i, j] = a[i] == b[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        return common;
    }

    private static List<string> Lines(string text)
    {
        var lines = new List<string>();
        for (var at = 0; at < text.Length;)
        {
            var end = text.IndexOf('\n', at) is var found && found < 0 ? text.Length : found + 1;
            lines.Add(text[at..end]);
            at = end;
        }

        return lines;
    }
}

using System.Collections.Immutable;

namespace Loomwright.Contacts;

/// <summary>What the readings taken in one position leave possible.</summary>
internal sealed class PositionRead
{
    private readonly ImmutableArray<Reading> _latest;

    /// <param name="all">Every way the leads can be joined.</param>
    /// <param name="readings">Those of this position, in the order taken; a later one of the same pair replaces the earlier.</param>
    public PositionRead(ImmutableArray<Joined> all, ImmutableArray<Reading> readings)
    {
        _latest = [.. readings.GroupBy(r => (Math.Min(r.One, r.Other), Math.Max(r.One, r.Other))).Select(g => g.Last())];
        Misfit = _latest.Where(r => !r.IsJoined).Select(r => Chain(r.One, r.Other) is [_, ..] chain ? chain.Add(r) : []).FirstOrDefault(c => !c.IsEmpty, []);
        var fitting = _latest.Where(r => r.IsJoined || Chain(r.One, r.Other).IsEmpty).ToList();
        Possible = [.. all.Where(j => fitting.TrueForAll(r => j.Joins(r.One, r.Other) == r.IsJoined))];
    }

    /// <summary>Every way the leads can still be joined; one when the position is known.</summary>
    public ImmutableArray<Joined> Possible { get; }

    /// <summary>Readings that cannot all be right, beeps that join two leads and the one between them that is not; empty when all fit.</summary>
    public ImmutableArray<Reading> Misfit { get; }

    /// <summary>True when joined in all that is possible, false when in none, null when not told yet.</summary>
    public bool? Joins(int one, int other)
    {
        var joined = Possible.Count(j => j.Joins(one, other));
        return joined == Possible.Length ? true : joined == 0 ? false : null;
    }

    // The shortest way from one lead to another over joined pairs; empty when there is none.
    private ImmutableArray<Reading> Chain(int from, int to)
    {
        var waiting = new Queue<(int At, ImmutableArray<Reading> Way)>([(from, [])]);
        var seen = new HashSet<int> { from };
        while (waiting.TryDequeue(out var here))
        {
            if (here.At == to)
            {
                return here.Way;
            }

            foreach (var step in _latest.Where(r => r.IsJoined && (r.One == here.At || r.Other == here.At)))
            {
                var next = step.One == here.At ? step.Other : step.One;
                if (seen.Add(next))
                {
                    waiting.Enqueue((next, here.Way.Add(step)));
                }
            }
        }

        return [];
    }
}

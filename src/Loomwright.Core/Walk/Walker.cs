using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>
/// Walks through every state a bike can be brought into, breadth first, and compares each with what was promised
/// (docs/walk.md). A round is one operation more from rest; a round is shared among workers and put together in order,
/// so that the answer is the same however many there are.
/// </summary>
internal sealed class Walker
{
    // As many states of a round are gone on from before they are put together; a worker takes some of them at a time.
    private const int Batch = 8192;
    private const int Share = 32;

    private readonly WalkOptions _options;
    private readonly Shared _shared;
    private readonly Trail _trail;
    private readonly Tally _tally;
    private readonly Worker[] _workers;
    private readonly List<Reached>[] _reached = [.. Enumerable.Range(0, Batch).Select(_ => new List<Reached>())];
    private readonly int[] _counts = new int[Batch];
    private readonly Verdict?[] _verdicts = new Verdict?[Batch];
    private readonly List<int> _next = [];
    private long _events;
    private int _judged;
    private int _depth;
    private int _deepest;

    private Walker(Loom loom, WalkOptions options)
    {
        _options = options;
        _shared = new Shared(loom, options.Healthy ?? loom);
        _trail = new Trail(_shared);
        _tally = new Tally(_shared, _trail);
        _workers = [.. Enumerable.Range(0, Math.Max(1, options.Workers)).Select(_ => new Worker(_shared))];
    }

    /// <summary>Walks. Never throws for anything in the loom; what stops it early stands in the answer.</summary>
    public static Walked Walk(Loom loom, WalkOptions? options = null) => new Walker(loom, options ?? new WalkOptions()).Walk();

    /// <summary>Walks and gives every state reached with what its promises remember.</summary>
    public static (Walked Walked, IReadOnlyList<(State State, Row<Memory> Promised)> States) WalkAndKeep(Loom loom, WalkOptions options)
    {
        var walker = new Walker(loom, options);
        var walked = walker.Walk();
        return (walked, [.. Enumerable.Range(0, walker._trail.Count).Select(i => walker._trail[i]).Select(s => (s.Inside.State with { Positions = s.Setting.Positions }, s.Inside.Promised))]);
    }

    private Walked Walk()
    {
        var end = Rounds();
        return new Walked
        {
            ControlCombinations = _trail.SettingCount,
            States = _trail.Count,
            Events = _events,
            ConfigurationsSolved = _shared.Solved.Count,
            End = end,
            Depth = end == WalkEnd.Complete ? _deepest : Math.Max(0, _depth - 1),
            Surprises = _tally.Surprises(),
            BackFeeds = _tally.BackFeeds(),
            Drain = _tally.Drain(),
        };
    }

    private WalkEnd Rounds()
    {
        var from = new List<int>();
        for (_depth = 0; from.Count > 0 || _depth <= _shared.Settings.Farthest; _depth++)
        {
            _next.Clear();
            if ((GoOn(from) ?? StartFarther()) is { } early)
            {
                return early;
            }

            from = [.. _next];
            _deepest = from.Count > 0 ? _depth : _deepest;
            if (_options.StopAtFirstSurprise && _tally.Count > 0)
            {
                return WalkEnd.FirstSurprise;
            }
        }

        return WalkEnd.Complete;
    }

    private WalkEnd? GoOn(List<int> from)
    {
        for (var first = 0; first < from.Count; first += Batch)
        {
            var start = first;
            var count = Math.Min(Batch, from.Count - first);
            Among(count, (worker, i) => _counts[i] = worker.GoOn(from[start + i], _trail, _reached[i]));
            for (var i = 0; i < count && !Stopped; i++)
            {
                _events += _counts[i];
                foreach (var reached in _reached[i])
                {
                    PutDown(from[first + i], reached);
                }

                _reached[i].Clear();
            }

            Judge();
            _options.Progress?.Invoke(new WalkProgress(_depth, _trail.Count, from.Count - first - count + _next.Count, _tally.Count));
            if (Early() is { } early)
            {
                return early;
            }
        }

        return null;
    }

    // Every setting of what stays where put is one to connect the supply in, so many moves from rest.
    private WalkEnd? StartFarther()
    {
        foreach (var setting in _shared.Settings.FromRest(_depth))
        {
            PutDown(Trail.Nowhere, _workers[0].Start(setting));
            if (Early() is { } early)
            {
                return early;
            }
        }

        Judge();
        return Early();
    }

    private bool Stopped => _options.Stop.IsCancellationRequested;

    private WalkEnd? Early() => Stopped ? WalkEnd.Stopped : _trail.Count > _options.MostStates ? WalkEnd.Limit : null;

    private void PutDown(int from, Reached reached)
    {
        if (reached.Failure is { } failure)
        {
            _tally.Add(from, reached, failure);
        }
        else if (_trail.Add(from, reached))
        {
            _next.Add(_trail.Count - 1);
        }
    }

    // The states that came new since the last time.
    private void Judge()
    {
        for (; _judged < _trail.Count && !Stopped; _judged += Batch)
        {
            var first = _judged;
            var count = Math.Min(Batch, _trail.Count - first);
            Among(count, (worker, i) => _verdicts[i] = worker.Judge(first + i, _trail));
            for (var i = 0; i < count && !Stopped; i++)
            {
                _tally.Add(first + i, _verdicts[i]!);
            }
        }

        _judged = _trail.Count;
    }

    private void Among(int count, Action<Worker, int> work)
    {
        var taken = -Share;
        Parallel.ForEach(_workers, new ParallelOptions { MaxDegreeOfParallelism = _workers.Length }, worker =>
        {
            int share;
            while (!Stopped && (share = Interlocked.Add(ref taken, Share)) < count)
            {
                for (var i = share; i < Math.Min(share + Share, count); i++)
                {
                    work(worker, i);
                }
            }
        });
    }
}

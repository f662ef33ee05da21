using System.Collections.Concurrent;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>One configuration of a healthy wiring: its operating points and the state they were found in.</summary>
/// <param name="Place">In the order found.</param>
/// <param name="Moments">Its operating points.</param>
/// <param name="SquareVolts">Mean over the moments, by link.</param>
/// <param name="Heated">What the filaments settled at where something is dimmed, else null.</param>
/// <param name="State">What was switched how …</param>
/// <param name="Between">… between flashes or not …</param>
/// <param name="ColdNow">… and what was cold.</param>
internal sealed record NearPoint(int Place, NearMoment[] Moments, double[] SquareVolts, Curve[]? Heated, State State, bool Between, bool[]? ColdNow);

/// <summary>
/// Operating points of a healthy wiring, kept to find those of the same wiring with a few links changed: a small
/// system for the changed links alone, solved to the last digit, in place of the whole network.
/// </summary>
internal sealed class Near
{
    private readonly ConcurrentDictionary<ulong[], NearPoint> _points = new(new Solved.SameWords());
    private readonly ConcurrentDictionary<ulong[], NearPoint>.AlternateLookup<ReadOnlySpan<ulong>> _byKey;
    private readonly List<NearPoint> _inOrder = [];
    private readonly HashSet<NearPoint?> _used = [];

    public Near(Wiring healthy)
    {
        Healthy = healthy;
        Varying = Solved.VaryingOf(healthy);
        _byKey = _points.GetAlternateLookup<ReadOnlySpan<ulong>>();
    }

    /// <summary>The wiring they are of.</summary>
    public Wiring Healthy { get; }

    /// <summary>Places of its links whose curve a state decides.</summary>
    public int[] Varying { get; }

    /// <summary>In the order found.</summary>
    public IReadOnlyList<NearPoint> InOrder => _inOrder;

    public NearPoint? Find(ReadOnlySpan<ulong> configuration) => _byKey.TryGetValue(configuration, out var point) ? point : null;

    /// <summary>Those used since this was last asked; null among them for one that could not be kept.</summary>
    public NearPoint?[] TakeUsed()
    {
        NearPoint?[] used = [.. _used];
        _used.Clear();
        return used;
    }

    public void Use(NearPoint? point) => _used.Add(point);

    public NearPoint Keep(ReadOnlySpan<ulong> configuration, State state, bool between, bool[]? coldNow, NearMoment[] moments, double[] squareVolts, Curve[]? heated)
    {
        var point = new NearPoint(_inOrder.Count, moments, squareVolts, heated, state, between, coldNow is null ? null : [.. coldNow]);
        _inOrder.Add(point);
        _points[configuration.ToArray()] = point;
        return point;
    }
}

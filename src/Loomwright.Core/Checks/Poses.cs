using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>
/// What a hand can bring about, bounded: everything at rest, each function operated, one control moved, and a second one beside
/// those that change the most. What lies beyond was not tried. Not for two threads at once.
/// </summary>
internal sealed class Poses
{
    private const int MostPairs = 60;

    private readonly Settler _settler;
    private readonly Watching _watching;
    private readonly Settled _rest;
    private readonly Dictionary<Row<int>, Pose> _known = [];
    private readonly Lazy<ImmutableArray<Pose>> _poses;
    private readonly Lazy<ImmutableArray<(Function Function, Pose Pose)>> _functions;

    /// <param name="healthy">The design that full light is measured in.</param>
    public Poses(Paths paths, Loom healthy)
    {
        Paths = paths;
        Wiring = Wiring.Of(paths.Loom);
        _settler = new Settler(Wiring);
        _watching = new Watching(Wiring, _settler, FullLight.Of(healthy));
        _rest = _settler.Settle(Wiring.Start());
        Rest = At(_rest.State.Positions);
        _functions = new(() =>
        [
            .. from function in paths.Loom.Functions
               let settled = Operated.For(Wiring, function.Works)
               where settled is not null
               select (function, new Pose(settled.State.Positions, settled, _watching.Seen(settled))),
        ]);
        _poses = new(Try);
    }

    public Paths Paths { get; }

    public Wiring Wiring { get; }

    /// <summary>Power connected, every control at rest.</summary>
    public Pose Rest { get; }

    /// <summary>Each function that can be made to work, working.</summary>
    public ImmutableArray<(Function Function, Pose Pose)> Functions => _functions.Value;

    /// <summary>All that was tried and has an answer, fewest moves first.</summary>
    public ImmutableArray<Pose> All => _poses.Value;

    /// <summary>The place of a control, or −1.</summary>
    public int Control(string name) => Wiring.Controls.ToList().FindIndex(c => Names.Same(c.Name, name));

    /// <summary>Poses from which a control is worth moving: rest, the single move that changes the most, and every function that names it.</summary>
    public IEnumerable<Pose> Bases(int control) =>
    [
        Rest,
        .. Singles().Take(1),
        .. Functions.Where(f => f.Function.Works.NamesUsed().Contains(Wiring.Controls[control].Name, Names.Comparer)).Select(f => f.Pose),
    ];

    /// <summary>The bike with controls as given, moved there from rest: what stays put first, as a hand would do it.</summary>
    public Pose At(Row<int> positions)
    {
        if (_known.TryGetValue(positions, out var known))
        {
            return known;
        }

        var settled = _rest;
        foreach (var c in Enumerable.Range(0, positions.Length).Where(c => positions[c] != _rest.State.Positions[c]).OrderBy(c => Wiring.Controls[c].Momentary))
        {
            settled = _settler.Settle(Time.Moved(settled.State, c, positions[c]));
        }

        return _known[positions] = new Pose(positions, settled, _watching.Seen(settled));
    }

    /// <summary>Where the controls stand: <c>lock at riding, left at pressed</c>.</summary>
    public string How(Pose pose)
    {
        var moved = Enumerable.Range(0, Wiring.Controls.Length).Where(c => pose.Positions[c] != _rest.State.Positions[c]);
        var words = string.Join(", ", moved.Select(c => $"{Wiring.Controls[c].Name} at {Wiring.Controls[c].Positions[pose.Positions[c]]}"));
        return words.Length == 0 ? "everything at rest" : words;
    }

    /// <summary>Places of what is seen of a part.</summary>
    public IEnumerable<int> SightsOf(string part) => Enumerable.Range(0, Wiring.Sights.Length).Where(s => Names.Same(Wiring.Sights[s].Part, part));

    /// <summary>Whether a lamp, horn, motor or load can be told to be on.</summary>
    public static bool IsOn(Symbol symbol) => symbol is Symbol.Lit or Symbol.Dim or Symbol.Sounds or Symbol.Turns or Symbol.Works || Flashes(symbol);

    public static bool Flashes(Symbol symbol) => symbol is Symbol.Flashing or Symbol.FlashingFast or Symbol.FlashingSlowly;

    /// <summary>Volts and amps of a link in a pose, with what blinks on; 0 where there is no answer.</summary>
    public (double Volts, double Amps) Of(Pose pose, int link) =>
        pose.Settled.Pictures.IsEmpty ? (0, 0) : (pose.Settled.Pictures[0].Across(Wiring.Links[link]), pose.Settled.Pictures[0].Amps[link]);

    /// <summary>What the supplies give together.</summary>
    public double SupplyAmps(Pose pose) => pose.Settled.Pictures.IsEmpty ? 0 : Wiring.Supplies.Sum(s => -pose.Settled.Pictures[0].Amps[s]);

    public static string Printed(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:0.#} {unit}");

    private ImmutableArray<Pose> Try()
    {
        var singles = Singles().ToList();
        var pairs = from first in singles
                    from second in singles
                    let both = Both(first.Positions, second.Positions)
                    where both is not null
                    select both.Value;
        return
        [
            .. singles.Prepend(Rest).Concat(Functions.Select(f => f.Pose)).Concat(pairs.Distinct().Take(MostPairs).Select(At)).Where(m => !m.Seen.IsEmpty),
        ];
    }

    // What changes most of what is seen and read first: the key before the horn button.
    private IEnumerable<Pose> Singles() => Enumerable.Range(0, Wiring.Controls.Length)
        .SelectMany(c => Enumerable.Range(0, Wiring.Controls[c].Positions.Length).Where(p => p != Rest.Positions[c]).Select(p => At(Rest.Positions.With(c, p))))
        .OrderByDescending(Changes);

    private double Changes(Pose pose) =>
        (10 * pose.Settled.State.Boxes.AsSpan().ToArray().Count(b => b.Awake)) + pose.Seen.Zip(Rest.Seen).Count(s => s.First.Symbol != s.Second.Symbol) + Math.Min(1, Math.Abs(SupplyAmps(pose)));

    private Row<int>? Both(Row<int> one, Row<int> other)
    {
        var both = one;
        var moved = 0;
        for (var c = 0; c < one.Length; c++)
        {
            if (other[c] != Rest.Positions[c])
            {
                moved += one[c] == Rest.Positions[c] ? 1 : 0;
                both = one[c] == Rest.Positions[c] ? both.With(c, other[c]) : both;
            }
        }

        return moved > 0 ? both : null;
    }
}

/// <summary>The bike with its controls in some position, settled.</summary>
internal sealed record Pose(Row<int> Positions, Settled Settled, ImmutableArray<Seen> Seen);

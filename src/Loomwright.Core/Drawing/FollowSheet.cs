using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>The overview, all at its place, with one wire strong and the rest quiet: where it starts, what it goes through, where it ends.</summary>
internal static class FollowSheet
{
    private const double NumberSize = 19;

    public static Scene Of(Loom loom, Wire wire, Scene overview)
    {
        var chain = Chain(loom, wire);
        var onIt = chain.Select(l => l.Wire.Name).ToHashSet(StringComparer.Ordinal);
        var ends = chain.Select(l => l.From).Append(chain[^1].To).Concat(chain.Select(l => l.To)).Select(e => e.Part).ToHashSet(Names.Comparer);
        var quiet = overview.Cells.Where(c => !ends.Contains(c.Part)).Select(c => c.Area.Inside(-2)).ToList();
        var strands = overview.Strands.Select(s => onIt.Contains(s.Wire) ? s with { Strong = true } : s with { Quiet = true }).OrderBy(s => s.Strong ? 1 : 0).ToImmutableArray();
        var heads = overview.Letterings.Where(l => l.Part is not null).GroupBy(l => l.Part!, Names.Comparer).Select(g => g.First()).ToHashSet();
        var texts = overview.Letterings
            .Where(l => l.Wire is not null ? onIt.Contains(l.Wire) : l.Part is null || ends.Contains(l.Part) || heads.Contains(l))
            .Select(l => l.Part is not null && !ends.Contains(l.Part) ? l with { Quiet = true } : l)
            .ToList();
        var stops = Stops(chain, overview).ToList();
        foreach (var stop in stops)
        {
            texts.Add(Numbered(stop, overview, texts, onIt));
        }

        return overview with
        {
            Id = "wire",
            Title = $"{loom.Name}: follow {wire.Name}",
            About = string.Join("  –  ", stops.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Number} {s.Part} {s.Terminal}").TrimEnd())),
            Strands = strands,
            Cells = [.. overview.Cells.Select(c => c with { Quiet = !ends.Contains(c.Part) })],
            Strokes = [.. overview.Strokes.Where(s => !quiet.Exists(q => Holds(q, s.From)))],
            Dots = [.. overview.Dots.Where(d => !quiet.Exists(q => Holds(q, d)))],
            Signs = [.. overview.Signs.Where(s => s.Part is null || ends.Contains(s.Part) || onIt.Contains(s.Return ?? ""))],
            Letterings = [.. texts],
            Stops = [.. stops],
            Lights = [],
        };
    }

    private static bool Holds(Area area, Spot spot) => area.X <= spot.X && spot.X <= area.Right && area.Y <= spot.Y && spot.Y <= area.Bottom;

    // The wire, and those before and behind it as long as only one goes on.
    private static List<(TerminalRef From, Wire Wire, TerminalRef To)> Chain(Loom loom, Wire wire)
    {
        var onward = new Onward(loom);
        var chain = new List<(TerminalRef From, Wire Wire, TerminalRef To)> { (wire.From, wire, wire.To) };
        while (onward.Next(chain[^1].To, chain[^1].Wire) is var (from, next) && chain.TrueForAll(l => l.Wire != next))
        {
            chain.Add((from, next, next.From == from ? next.To : next.From));
        }

        while (onward.Next(chain[0].From, chain[0].Wire) is var (from, before) && chain.TrueForAll(l => l.Wire != before))
        {
            chain.Insert(0, (before.From == from ? before.To : before.From, before, from));
        }

        return chain;
    }

    private static IEnumerable<Stop> Stops(List<(TerminalRef From, Wire Wire, TerminalRef To)> chain, Scene overview)
    {
        for (var i = 0; i <= chain.Count; i++)
        {
            var at = i < chain.Count ? chain[i].From : chain[^1].To;
            var goesOn = i < chain.Count ? string.Create(CultureInfo.InvariantCulture, $": on along {chain[i].Wire.Name}, {Labels.Of(chain[i].Wire)} mm², {chain[i].Wire.Length.Metres:0.00} m") : ": here it ends";
            yield return new Stop(i + 1, at.Part, at.Terminal, Spot(at, i < chain.Count ? chain[i].Wire : chain[^1].Wire), $"{at}{goesOn}");
        }

        // Where the wire ends on the sheet; a return, which is no line, is at its terminal's row.
        Spot Spot(TerminalRef at, Wire wire)
        {
            var pin = overview.Pins.First(p => new TerminalRef(p.Part, p.Terminal) == at);
            return overview.Strands.FirstOrDefault(s => s.Wire == wire.Name) is { } strand
                ? wire.From == at ? strand.Path[0] : strand.Path[^1]
                : new Spot(pin.Area.X, pin.Area.Y + (pin.Area.Height / 2));
        }
    }

    // On the wire itself, beside its label, where nothing else is.
    private static Lettering Numbered(Stop stop, Scene overview, List<Lettering> texts, HashSet<string> onIt)
    {
        var strand = overview.Strands.FirstOrDefault(s => onIt.Contains(s.Wire) && (s.Path[0] == stop.At || s.Path[^1] == stop.At));
        var spots = strand is null ? Enumerable.Range(4, 400).Select(i => new Spot(stop.At.X - (i * 3), stop.At.Y)) : Along(strand.Path[0] == stop.At ? strand.Path : [.. strand.Path.Reverse()]);
        var candidates = spots.Select(s => new Lettering(string.Create(CultureInfo.InvariantCulture, $"{stop.Number}"), new Spot(s.X, s.Y + 7), Hold.Middle) { Size = NumberSize, Bold = true, Wire = strand?.Wire, Numbered = true });
        var runs = new Runs([.. overview.Strands.Select(s => (IReadOnlyList<Spot>)s.Path)]);
        return candidates.FirstOrDefault(
            c => !texts.Exists(t => t.Area.Meets(c.Area.Inside(-3)))
                && !overview.Cells.Any(k => k.Outlined && k.Area.Meets(c.Area.Inside(-3)))
                && runs.Through(c.Area, i => overview.Strands[i].Wire != strand?.Wire) == 0,
            candidates.First());
    }

    private static IEnumerable<Spot> Along(ImmutableArray<Spot> path)
    {
        for (var i = 1; i < path.Length; i++)
        {
            var (a, b) = (path[i - 1], path[i]);
            var length = Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);
            for (var at = 12.0; at < length; at += 3)
            {
                yield return new Spot(a.X + ((b.X - a.X) * at / length), a.Y + ((b.Y - a.Y) * at / length));
            }
        }
    }
}

using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>The design with the supply the bench has, and with a fuse next to it where the design has none.</summary>
internal static class Supplied
{
    /// <summary>What the added fuse is called.</summary>
    public const string Fuse = "bench fuse";

    private const double BenchVolts = 13;
    private const double LargestAmps = 40;

    public static Loom With(Loom loom, PlanOptions options)
    {
        if (new Paths(loom).Source is not { } source)
        {
            return loom;
        }

        var bench = options.BenchSupplyLimit is { } limit ? OnBenchSupply(loom, source, limit) : loom;
        var paths = new Paths(bench);
        return FusesAt(paths).Any() ? bench : WithFuse(bench, paths.Feed);
    }

    /// <summary>Fuses with nothing but wire between them and the supply, in file order; a breaker's rating cannot be changed for the bench.</summary>
    public static IEnumerable<Part> FusesAt(Paths paths) => ProtectorsAt(paths).Where(Fetching.IsFuse);

    /// <summary>Fuses and breakers with nothing but wire between them and the supply, in file order.</summary>
    public static IEnumerable<Part> ProtectorsAt(Paths paths)
    {
        var bare = paths.Joined(paths.Feed, t => t.Via is Via.Wire or Via.Joint);
        return paths.Loom.Parts.Where(p => paths.Ties.Any(t => t.Via == Via.Fuse && t.Part == p && (bare.Contains(t.A) || bare.Contains(t.B))));
    }

    private static Loom OnBenchSupply(Loom loom, Part source, Current limit)
    {
        const string name = "bench supply";
        TerminalRef On(TerminalRef end) => Names.Same(end.Part, source.Name) ? end with { Part = name } : end;
        var supply = new Part(name, name, source.Place, Settings.None.With("volts", new Value.Number(BenchVolts)).With("limit", new Value.Number(limit.Amps)));
        return loom with
        {
            Parts = loom.Parts.Replace(source, supply),
            Wires = [.. loom.Wires.Select(w => w with { From = On(w.From), To = On(w.To) })],
        };
    }

    /// <summary>The design with one fuse between the supply and every lead taken from it.</summary>
    public static Loom WithFuse(Loom loom, TerminalRef feed)
    {
        TerminalRef In(TerminalRef end) => end.Equals(feed) ? new TerminalRef(Fuse, "2") : end;
        return loom with
        {
            Parts = loom.Parts.Add(new Part(Fuse, "fuse", null, Settings.None.With("rating", new Value.Number(LargestAmps)))),
            Wires =
            [
                new Wire($"{Fuse} lead", feed, new TerminalRef(Fuse, "1"), new CrossSection(2.5), null, new Length(0.1), null, null),
                .. loom.Wires.Select(w => w with { From = In(w.From), To = In(w.To) }),
            ],
        };
    }
}

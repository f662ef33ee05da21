using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>What has its plug off while the rest is measured: whatever reads as low as a short.</summary>
internal static class Unplugged
{
    private const double LowOhms = 5;

    /// <summary>The parts with a load that reads low: what is seen first, then resistors across the supply, each in file order.</summary>
    public static ImmutableArray<string> In(Loom connected, Paths paths)
    {
        var rig = new Rig(connected);
        var seen = rig.Now.Seen.Where(s => ReadsLow(Sighted.Tie(paths, s.Name))).Select(s => s.Part);
        var sides = new FeedSide(paths);
        var resistors = connected.Parts.Where(p => p.Kind == "resistor" && paths.Ties.Any(t => t.Part?.Name == p.Name && sides.IsAcross(t.A, t.B) && ReadsLow(t))).Select(p => p.Name);
        return [.. seen.Concat(resistors).Distinct(Names.Comparer)];

        bool ReadsLow(Tie tie) => rig.Ohms(tie.A, tie.B) is { Ohms: <= LowOhms };
    }

    /// <summary>The design with these parts unplugged: their terminals are there and join nothing but the metal they are bolted to.</summary>
    public static Loom Of(Loom loom, Paths paths, ImmutableArray<string> parts) => loom with
    {
        Shorts = loom.Shorts.AddRange(parts.SelectMany(p => paths.Models[p].Joints.Where(j => loom.Part(j.Part) is not null).Select(j =>
            new Short(new TerminalRef(p, j.Terminal), new TerminalRef(j.Part, ""), new Quantities.Resistance(((Ohms)j.Curve).ResistanceOhms))))),
        Parts = [.. loom.Parts.Select(p => parts.Contains(p.Name, Names.Comparer) ? Socket(p, paths) : p)],
    };

    // As a switch that joins nothing: bare terminals under the same marks.
    private static Part Socket(Part part, Paths paths)
    {
        var nothing = new Value.Pairs([]);
        var positions = Settings.None.With("off", nothing).With("on", nothing);
        return part with
        {
            Kind = "switch",
            Settings = Settings.None.With("terminals", new Value.Words([.. paths.Models[part.Name].Terminals.Select(t => t.Mark)])).With("positions", new Value.Group(positions)),
        };
    }
}

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

    /// <summary>The parts with a load that reads low, in file order.</summary>
    public static ImmutableArray<string> In(Site site)
    {
        var rig = new Rig(site.Connected);
        return [.. rig.Now.Seen.Where(s => ReadsLow(s.Name)).Select(s => s.Part).Distinct(Names.Comparer)];

        bool ReadsLow(string seen)
        {
            var tie = Sighted.Tie(site.Whole, seen);
            return rig.Ohms(tie.A, tie.B) is { Ohms: <= LowOhms };
        }
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

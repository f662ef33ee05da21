using System.Collections.Immutable;
using Loomwright.Design;

namespace Loomwright.Checks;

/// <summary>What charges the bike, and its way to the battery as drawn, through no load.</summary>
internal sealed record Regulator(Part Part, TerminalRef Live, ImmutableArray<Tie> Way)
{
    public IEnumerable<Tie> Fuses => Way.Where(t => t.Via == Via.Fuse);

    /// <summary>All that are joined to the battery, in file order.</summary>
    public static IEnumerable<Regulator> In(Paths paths)
    {
        if (paths.Source is null)
        {
            yield break;
        }

        foreach (var (part, model) in paths.Built.Where(p => !p.Model.Charging.IsEmpty && p.Model.Polarity is not null))
        {
            var live = new TerminalRef(part.Name, paths.Loom.Ground == GroundSide.Negative ? model.Polarity!.Value.Plus : model.Polarity!.Value.Minus);
            if (paths.Way(live, t => t.Equals(paths.Feed), t => t.IsFixed || t.Via is Via.Contact or Via.Relay) is { } way)
            {
                yield return new Regulator(part, live, way);
            }
        }
    }
}

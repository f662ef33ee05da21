using System.Collections.Immutable;

namespace Loomwright.Simulation;

/// <summary>Links in which one wiring differs from another with the same nodes.</summary>
/// <param name="Changed">By place among the links of both.</param>
/// <param name="Added">What stands after the other's last link.</param>
internal sealed record Edits(ImmutableArray<(int Place, Link Now)> Changed, ImmutableArray<Link> Added)
{
    /// <summary>Whether the link at that place is among them.</summary>
    public bool Changes(int place)
    {
        foreach (var (changed, _) in Changed)
        {
            if (changed == place)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Null when the two are not alike enough.</summary>
    public static Edits? Between(Wiring healthy, Wiring wiring)
    {
        if (wiring.NodeCount != healthy.NodeCount || wiring.Links.Length < healthy.Links.Length)
        {
            return null;
        }

        var changed = ImmutableArray.CreateBuilder<(int, Link)>();
        for (var l = 0; l < healthy.Links.Length; l++)
        {
            var (before, now) = (healthy.Links[l], wiring.Links[l]);
            if (ReferenceEquals(before, now) || before == now)
            {
                continue;
            }

            if (before.Owner != now.Owner || before.Name != now.Name || before.Fuse != now.Fuse)
            {
                return null;
            }

            changed.Add((l, now));
        }

        return new Edits(changed.ToImmutable(), wiring.Links[healthy.Links.Length..]);
    }
}

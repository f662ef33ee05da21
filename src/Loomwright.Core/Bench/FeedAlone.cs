using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Stage 0 of a loom without a box: supply, fuse and the first switch, no load.</summary>
internal static class FeedAlone
{
    /// <summary>The feed of the first load up to and with its first switch; without a switch, up to its own last wire.</summary>
    public static Line Of(Survey survey, Line first)
    {
        var paths = survey.Paths;
        var load = Sighted.Tie(paths, first.Loads[0]);
        var routes = new Routes(paths, survey.After(first.Do));
        var whole = routes.Way(paths.Feed, t => t.Equals(load.A)) ?? routes.Way(paths.Feed, t => t.Equals(load.B)) ?? [];
        var toSwitch = whole.TakeWhile(t => t.Via != Via.Contact).Count();
        var feed = whole[..Math.Max(0, Math.Min(toSwitch + 1, whole.Length - 1))];
        var key = feed.Where(t => t.Via == Via.Contact).Select(t => ((Gate.ByControl)t.Element!.Gate!).Control).FirstOrDefault(c => !survey.IsMomentary(c));
        return new Line(
            "the feed",
            [],
            [.. first.Do.Where(o => key is not null && Names.Same(o.Control, key))],
            new Reach([paths.Source!.Name], []).With(Routes.Of(feed)),
            []) { End = feed.Aggregate(paths.Feed, (at, tie) => tie.Other(at)) };
    }
}

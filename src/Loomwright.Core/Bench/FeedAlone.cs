using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Stage 0 of a loom without a box: supply, fuse and the first switch, no load.</summary>
internal static class FeedAlone
{
    /// <summary>The feed of the first load up to, but without, its own last wire; and the way back's last wire.</summary>
    public static Line Of(Survey survey, Line first)
    {
        var paths = survey.Paths;
        var positions = survey.Controls.ToDictionary(c => c.Name, c => c.Rest, Names.Comparer);
        foreach (var operation in first.Do)
        {
            positions[operation.Control] = operation.Position;
        }

        var load = Sighted.Tie(paths, first.Loads[0]);
        var routes = new Routes(paths, positions);
        var feed = (routes.Way(paths.Feed, t => t.Equals(load.A)) ?? routes.Way(paths.Feed, t => t.Equals(load.B)) ?? []).TakeWhile(t => !IsLast(t, load)).ToImmutableArray();
        var live = feed.Where(t => t.Via == Via.Contact).Select(t => ((Gate.ByControl)t.Element!.Gate!).Control).FirstOrDefault();
        var key = first.Do.Where(o => live is not null && Names.Same(o.Control, live) && !survey.IsMomentary(o.Control));
        var supply = new Reach([paths.Source!.Name], []);
        return new Line("the feed", [], [.. key], supply.With(Routes.Of(feed)), []) { End = feed.Aggregate(paths.Feed, (at, tie) => tie.Other(at)) };
    }

    private static bool IsLast(Tie tie, Tie load) => tie.Wire is not null && (IsOn(tie, load.A) || IsOn(tie, load.B));

    private static bool IsOn(Tie tie, TerminalRef at) => tie.A.Equals(at) || tie.B.Equals(at);
}

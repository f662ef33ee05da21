using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A switch that in one of its positions shorts the supply: found in the contact table, shown by simulation.</summary>
internal static class PositionJoinsFeedAndGround
{
    public static Rule Rule { get; } = new(
        "position-joins-feed-and-ground",
        Severity.Stop,
        Severity.Stop,
        "A switch position that joins feed to ground with no load between.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        if (paths.Source is null)
        {
            return [];
        }

        var controls = paths.Models.Values.SelectMany(m => m.Controls).DistinctBy(c => c.Name, Names.Comparer).ToImmutableArray();
        var rest = controls.ToImmutableDictionary(c => c.Name, c => c.Rest, Names.Comparer);
        var found = ImmutableArray.CreateBuilder<Finding>();
        foreach (var control in controls)
        {
            foreach (var position in control.Positions)
            {
                if (With(paths, controls, rest.SetItem(control.Name, position), control) is { } joined)
                {
                    found.Add(Found(paths, control, position, joined.Positions, joined.Way));
                }
            }
        }

        return found.ToImmutable();
    }

    // First with every other control at rest, then with one other moved: a button can close what a lock has prepared.
    private static (ImmutableDictionary<string, string> Positions, ImmutableArray<Tie> Way)? With(
        Paths paths, ImmutableArray<Control> controls, ImmutableDictionary<string, string> positions, Control control)
    {
        var others = controls.Where(c => c != control).SelectMany(c => c.Positions.Where(p => !Names.Same(p, c.Rest)).Select(p => positions.SetItem(c.Name, p)));
        foreach (var tried in others.Prepend(positions))
        {
            var way = paths.Way(paths.Feed, t => t.Equals(paths.Return), t => t.IsClosed(tried));
            if (way is { } joined && Contacts(joined, control).Any() && IsNeeded(paths, tried, control))
            {
                return (tried, joined);
            }
        }

        return null;
    }

    // Where the short is there in any position of this control, another one makes it.
    private static bool IsNeeded(Paths paths, ImmutableDictionary<string, string> positions, Control control) => control.Positions.Any(p =>
    {
        var moved = positions.SetItem(control.Name, p);
        return paths.Way(paths.Feed, t => t.Equals(paths.Return), t => t.IsClosed(moved)) is null;
    });

    private static IEnumerable<Tie> Contacts(ImmutableArray<Tie> way, Control control) =>
        way.Where(t => t.Element?.Gate is Gate.ByControl gate && Names.Same(gate.Control, control.Name));

    private static Finding Found(Paths paths, Control control, string position, ImmutableDictionary<string, string> positions, ImmutableArray<Tie> way)
    {
        var contact = Contacts(way, control).First();
        var clear = control.Positions.Where(p =>
        {
            var moved = positions.SetItem(control.Name, p);
            return paths.Way(paths.Feed, t => t.Equals(paths.Return), t => t.IsClosed(moved)) is null;
        });
        var others = positions.Where(p => !Names.Same(p.Key, control.Name) && !Names.Same(p.Value, RestOf(paths, p.Key))).Select(p => $"{p.Key} at {p.Value}").ToList();
        return new Finding(
            Rule.Code,
            Severity.Stop,
            new Subject.OfPart(contact.Part!.Name),
            others.Count == 0
                ? "At {position} {switch} joins feed to ground: {contact}. At {clear} it does not, so it seems to work there."
                : "At {position}, with {others}, {switch} joins feed to ground: {contact}. At {clear} it does not, so it seems to work there.",
            "The supply is shorted with nothing but wire between: {consequence}.",
            "Do not turn it to {position} with power on. Measure every pair of leads in every position once more; then move feed or ground to a lead that {position} does not join to the other.",
            [
                Evidence.Of("switch", control.Name),
                Evidence.Of("position", position),
                Evidence.Of("contact", $"{Called.At(paths, contact.A)} to {Called.At(paths, contact.B)}"),
                Evidence.Of("clear", string.Join(" and ", clear)),
                Evidence.Of("others", string.Join(" and ", others)),
                Evidence.Of("consequence", Consequence(paths, control, positions)),
            ]);
    }

    private static string RestOf(Paths paths, string control) =>
        paths.Models.Values.SelectMany(m => m.Controls).First(c => Names.Same(c.Name, control)).Rest;

    private static string Consequence(Paths paths, Control control, ImmutableDictionary<string, string> positions)
    {
        var rig = new Rig(paths.Loom);
        var others = positions.Where(p => !Names.Same(p.Key, control.Name)).OrderBy(p => p.Key, StringComparer.Ordinal);
        foreach (var (name, position) in others.Append(new(control.Name, positions[control.Name])))
        {
            rig.Do(new Operation.Set(name, position));
        }

        var blown = rig.Now.Fuses.Where(f => f.State == FuseState.Blown).Select(f => $"{f.Part} ({f.Rating.Printed})").ToList();
        var amps = rig.Now.Phases.IsEmpty ? null : rig.Now.Phases[0].Supply.ToString();
        return blown.Count > 0 ? $"computed, {string.Join(" and ", blown)} blows" : amps is null ? "no answer could be computed" : $"computed, {amps} flows and no fuse opens";
    }
}

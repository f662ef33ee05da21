using System.Globalization;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>The parts of one place in full; what leaves for elsewhere ends at a flag that names where.</summary>
internal static class PlaceSheet
{
    // Beyond this many columns of parts the flags have no room beside them.
    private const int MostColumns = 4;

    /// <param name="pageOf">The page a part's own place is drawn on, or null.</param>
    public static Scene Of(Loom loom, Place place, Func<Part, int?> pageOf, int trials)
    {
        var inside = loom.Parts.Where(p => p.Place is { } key && Names.Same(key, place.Key)).ToList();
        var isInside = inside.Select(p => p.Name).ToHashSet(Names.Comparer);
        var along = Columns.Along(loom);
        var flags = new Dictionary<string, Part>(Names.Comparer);
        var isRear = new HashSet<string>(Names.Comparer);
        var wires = loom.Wires.Where(w => isInside.Contains(w.From.Part) || isInside.Contains(w.To.Part)).Select(w => w with { From = Here(w.From), To = Here(w.To) }).ToList();
        var sub = loom with { Parts = [.. inside, .. flags.Values], Wires = [.. wires], Functions = [], Placing = Placing.None };
        var plates = new Plates(sub, loom);
        var most = Math.Clamp(inside.Count, 1, MostColumns);
        var standing = Overview.Found(sub, plates, trials, 1, most, columns =>
        {
            Columns.AssignBetween(plates, p => isRear.Contains(p.Part.Name), columns);
            return columns + 2;
        });
        return OverviewScene.Of(loom.Name, standing) with
        {
            Title = $"{loom.Name}: {place.Name}",
            About = "the parts that sit here; a wire that leaves ends at the name of its other terminal and the page it is drawn on",
        };

        TerminalRef Here(TerminalRef end)
        {
            if (isInside.Contains(end.Part) || loom.Part(end.Part) is not { } part)
            {
                return end;
            }

            var terminal = Kinds.Find(part.Kind)?.Build(part).Terminals.FirstOrDefault(t => Names.Same(t.Mark, end.Terminal));
            var page = pageOf(part) is { } number ? string.Create(CultureInfo.InvariantCulture, $", page {number}") : "";
            var words = $"{part.Name} {end.Terminal}{(terminal?.Name is { } name ? $" {name}" : "")}".TrimEnd() + page;
            if (flags.TryAdd(words, new Part(words, Plates.FlagKind, null, Settings.None)) && IsRear(part))
            {
                isRear.Add(words);
            }

            return new TerminalRef(words, "");
        }

        // Toward the rear of the bike, or on the side with fewer where neither is nearer.
        bool IsRear(Part part)
        {
            var (here, there) = (along.GetValueOrDefault(place.Key), along.GetValueOrDefault(part.Place ?? place.Key, along.GetValueOrDefault(place.Key)));
            return there == here ? isRear.Count * 2 < flags.Count : there < here;
        }
    }
}

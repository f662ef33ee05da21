using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Reads the places and how far it is between them.</summary>
internal static class PlacesReader
{
    public static ImmutableArray<Place> Read(Node? node, Found found)
    {
        var places = ImmutableArray.CreateBuilder<Place>();
        foreach (var entry in Sections.Map(node, "places", found))
        {
            if (!OwnerName.Check(entry.Key, found))
            {
                continue;
            }

            var settings = FormReader.Keys(entry.Value, Grammar.Place, $"the place “{entry.Key.Text}”", found);
            var heat = settings.Word("heat") switch
            {
                "warm" => Heat.Warm,
                "hot" => Heat.Hot,
                _ => Heat.Cool,
            };
            places.Add(new Place(entry.Key.Text, settings.Word("name") ?? entry.Key.Text, heat, settings.Word("moves")));
        }

        return places.ToImmutable();
    }

    public static ImmutableArray<Distance> Distances(Node? node, ImmutableArray<Place> places, Found found)
    {
        var distances = ImmutableArray.CreateBuilder<Distance>();
        foreach (var item in Sections.List(node, "distances", found))
        {
            var settings = FormReader.Keys(item, Grammar.Distance, "this distance", found);
            var between = settings.Words("between");
            var written = (item as Node.Map)?.Find("between")?.Value;
            if (written is not null && between.Length != 2)
            {
                FormReader.WrongShape(written, "“between”", "two places, [seat, tail]", found);
            }
            else if (written is not null
                && Known(between[0], written, places, found) is { } a
                && Known(between[1], written, places, found) is { } b
                && settings.Number("length") is { } metres)
            {
                distances.Add(new Distance(a, b, new Length(metres)));
            }
        }

        return distances.ToImmutable();
    }

    /// <summary>The key of a place as it was declared, or null when it was reported as unknown.</summary>
    public static string? Known(string written, Node at, ImmutableArray<Place> places, Found found)
    {
        if (places.FirstOrDefault(p => Names.Same(p.Key, written)) is { } place)
        {
            return place.Key;
        }

        found.Stop(
            "unknown-place",
            at.Span,
            "“{place}” is not among the places",
            "lengths and heat are worked out from places",
            "{cure} Otherwise add it under “places”",
            Evidence.Of("place", NodeReader.Short(written)),
            Evidence.Of("cure", Suggestion.For(written, [.. places.Select(p => p.Key)])));
        return null;
    }
}

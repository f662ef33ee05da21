using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>The bands of a function sheet, from left to right.</summary>
internal enum Band
{
    Feed,
    Protection,
    Switch,
    Load,
    Return,
}

/// <summary>One numbered line of a function sheet, and the band of each of its stations.</summary>
internal sealed record FunctionLine(string Caption, Trail Trail, ImmutableArray<Band> Bands);

/// <summary>Which lines a function needs: the current of each load, then what asks for it, then what wakes the box.</summary>
internal static class FunctionLines
{
    /// <summary>The lines, and the captions of those no way of wires and contacts was found for: nothing is wired there, or it is told over a data lead.</summary>
    public static (List<FunctionLine> Lines, List<string> Missing) Of(Loom loom, Function function)
    {
        var trace = new Trace(loom);
        var lines = new List<FunctionLine>();
        var missing = new List<string>();
        foreach (var (part, sight) in Seen(loom, trace, function))
        {
            var name = sight.Name.Length == 0 ? part.Name : $"{part.Name}.{sight.Name}";
            Add($"{name}: its own current", trace.Through(part, trace.Model(part.Name)!.Elements.First(e => e.Name == sight.Element)));
        }

        // A relay on the way may hang on another one.
        var asked = new HashSet<(string, string)>();
        for (var i = 0; i < lines.Count; i++)
        {
            foreach (var station in lines[i].Trail.Stations)
            {
                foreach (var coil in Coils(station).Where(c => !lines.Exists(l => Uses(l, station.Part, c)) && asked.Add((station.Part.Name, c.Name))))
                {
                    Add($"what pulls in the {station.Part.Name}", trace.Through(station.Part, coil));
                }
            }
        }

        foreach (var (controller, input, caption) in Inputs(lines))
        {
            Add(caption, trace.Asking(controller, input));
        }

        return (lines, missing);

        void Add(string caption, Trail? trail)
        {
            if (trail is null)
            {
                missing.Add(caption);
            }
            else
            {
                lines.Add(new FunctionLine(caption, trail, Bands(trail)));
            }
        }
    }

    private static IEnumerable<(Part Part, Sight Sight)> Seen(Loom loom, Trace trace, Function function)
    {
        foreach (var what in function.Shows.Select(s => s.What).Distinct(Names.Comparer))
        {
            var (partName, sightName) = what.IndexOf('.', StringComparison.Ordinal) is > 0 and var dot ? (what[..dot], what[(dot + 1)..]) : (what, null);
            if (loom.Part(partName) is { } part)
            {
                foreach (var sight in trace.Model(part.Name)!.Sights.Where(s => sightName is null || Names.Same(s.Name, sightName)))
                {
                    yield return (part, sight);
                }
            }
        }
    }

    private static bool Uses(FunctionLine line, Part part, Element element) => line.Trail.Stations.Any(s => s.Part == part && s.Through == element);

    private static IEnumerable<Element> Coils(Station station) =>
        Gates(station.Through?.Gate).OfType<Gate.ByRelay>()
            .SelectMany(g => station.Model.Relays.Where(r => r.Name == g.Relay))
            .SelectMany(r => r.Coils)
            .Select(c => station.Model.Elements.First(e => e.Name == c));

    private static IEnumerable<Gate> Gates(Gate? gate) => gate switch
    {
        null => [],
        Gate.Both both => Gates(both.One).Concat(Gates(both.Other)),
        _ => [gate],
    };

    // Each input once: first those the outputs on the way ask, then those that wake the box.
    private static List<(Part Controller, Input Input, string Caption)> Inputs(List<FunctionLine> lines)
    {
        var found = new List<(Part, Input Input, string)>();
        foreach (var station in lines.SelectMany(l => l.Trail.Stations).Where(s => s.Model.Controller is not null).DistinctBy(s => (s.Part.Name, s.Through?.Name)))
        {
            var controller = station.Model.Controller!;
            var outputs = Gates(station.Through?.Gate).OfType<Gate.ByOutput>().SelectMany(g => controller.Outputs.Where(o => o.Name == g.Output));
            Ask(outputs.SelectMany(o => o.When.NamesUsed()), "what asks for it");
            Ask(controller.Awake.NamesUsed(), $"what wakes the {station.Part.Name}");

            void Ask(IEnumerable<string> names, string caption)
            {
                foreach (var input in names.Select(n => controller.Inputs.FirstOrDefault(i => Names.Same(i.Name, n))).OfType<Input>())
                {
                    if (!found.Exists(f => f.Input == input))
                    {
                        found.Add((station.Part, input, $"{caption}: {input.Name}"));
                    }
                }
            }
        }

        return found;
    }

    // What comes first stays first: a fuse behind the switch stands in the switch's band.
    private static ImmutableArray<Band> Bands(Trail trail)
    {
        var bands = ImmutableArray.CreateBuilder<Band>();
        var at = Band.Feed;
        for (var i = 0; i < trail.Stations.Length; i++)
        {
            var station = trail.Stations[i];
            var own = IsLoad(station, i, trail) ? Band.Load
                : at == Band.Load || Returns.IsPoint(station.Model) && station.Part.Kind is "ground stud" or "ground body" || i == trail.Stations.Length - 1 ? Band.Return
                : station.Model.Protectors.Length > 0 ? Band.Protection
                : station.Model.Controls.Length > 0 || station.Model.Controller is not null && i > 0 || station.Model.Relays.Length > 0 ? Band.Switch
                : at;
            at = own > at ? own : at;
            bands.Add(at);
        }

        return bands.ToImmutable();
    }

    private static bool IsLoad(Station station, int index, Trail trail) =>
        (station.Through is { } element && (station.Model.Sights.Any(s => s.Element == element.Name) || station.Model.Relays.Any(r => r.Coils.Contains(element.Name))))
        || (station.Model.Controller is not null && index > 0 && index == trail.Stations.Length - 1);
}

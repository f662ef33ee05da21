using System.Collections.Immutable;
using System.Text.Json;
using Loomwright.Bench;
using Loomwright.Dictionary;
using Loomwright.Sessions;

namespace Loomwright.Web.Guided;

/// <summary>One thing that may stand otherwise than expected.</summary>
/// <param name="What">Its name in the record.</param>
/// <param name="Label">Its name on the screen.</param>
/// <param name="Words">How it may stand.</param>
public sealed record Instead(string What, string Label, ImmutableArray<string> Words)
{
    /// <summary>What a person at a stage may tell by a tap: lamps and the like, the box's lights, fuses.</summary>
    public static ILookup<Sense, Instead> Of(Stage stage)
    {
        var sights = Sights.Of(stage);
        return Listed(sights).ToLookup(o => sights.What[o].Sense, o => new Instead(sights.What[o].Name, Named(stage, sights.What[o]), [.. sights.Words(o).Select(w => w.Word)]));
    }

    /// <summary>How all of them should stand at a step, in the order of the list, as the page's script reads it; null before power.</summary>
    public static string? Should(Stage stage, Step step)
    {
        var sights = Sights.Of(stage);
        var signs = sights.Should(step.Id);
        return signs.IsEmpty ? null : JsonSerializer.Serialize(Listed(sights).ToDictionary(o => sights.What[o].Name, o => sights.What[o].Word(signs[o])));
    }

    private static IEnumerable<int> Listed(Sights sights) => Enumerable.Range(0, sights.What.Length).Where(o => sights.What[o].Sense != Sense.Relay);

    private static string Named(Stage stage, Observable what)
    {
        if (what.Sense != Sense.BoxLight)
        {
            return Simulation.Words.Name(what.Name);
        }

        var mark = what.Name[(what.Part.Length + 1)..];
        var name = Bike.Model(stage.Connected.Part(what.Part)!).Terminals.FirstOrDefault(t => t.Mark == mark)?.Name;
        return $"light at {mark}{(name is null || name == mark ? "" : $" ({name})")}";
    }
}

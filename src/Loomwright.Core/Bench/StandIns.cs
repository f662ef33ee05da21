using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>What the owner uses on the bench in place of a part.</summary>
internal static class StandIns
{
    private static readonly ImmutableArray<string> LightKeys = ["filament", "led", "category", "led drive", "rated volts", "hot over cold"];

    /// <summary>By the part replaced.</summary>
    public static ImmutableDictionary<string, string> Of(Loom loom) => loom.StandIns
        .Where(s => CanBeLead(loom, s.For) || Watts(s.This) is not null)
        .GroupBy(s => s.For, Names.Comparer)
        .ToImmutableDictionary(g => g.Key, g => g.First().This, Names.Comparer);

    /// <summary>Whether the part is no more than contacts, so that a lead held from terminal to terminal equals it.</summary>
    public static bool CanBeLead(Loom loom, string part) =>
        loom.Part(part) is { } found && Kinds.Find(found.Kind)?.Build(found) is { Controls.IsEmpty: false, Controller: null, Sights.IsEmpty: true };

    /// <summary>What can replace a lamp with one filament: any of the same watts. Null for all other parts.</summary>
    public static string? LampInstead(Model model) =>
        model is { Sights: [Sight.Lamp { Law: LightLaw.Filament } sight] } && model.Elements.FirstOrDefault(e => Names.Same(e.Name, sight.Element))?.Curve is Filament filament
            ? $"any {new Power(filament.Watts)} lamp"
            : null;

    /// <summary>The design with every <c>a 21 W lamp</c> in place of the lamp it stands in for, one for each of its elements.</summary>
    public static Loom WithLamps(Loom loom) => loom with { Parts = [.. loom.Parts.Select(p => WithLamp(loom, p))] };

    private static Part WithLamp(Loom loom, Part part) =>
        loom.StandIns.FirstOrDefault(s => Names.Same(s.For, part.Name)) is { } standIn && Watts(standIn.This) is { } watts && Kinds.Find(part.Kind)?.Build(part).Sights.All(s => s is Sight.Lamp) == true
            ? part with { Settings = Lit(part.Settings, watts) }
            : part;

    private static Settings Lit(Settings settings, double watts)
    {
        Settings Filament(Settings s) => new Settings([.. s.Entries.Where(e => !LightKeys.Contains(e.Key, Names.Comparer))]).With("filament", new Value.Number(watts));
        return settings.Group("elements") is { Entries.IsEmpty: false } elements
            ? settings.With("elements", new Value.Group(new Settings([.. elements.Entries.Select(e => KeyValuePair.Create(e.Key, (Value)new Value.Group(Filament(e.Value is Value.Group g ? g.Entries : Settings.None))))])))
            : Filament(settings);
    }

    // "a 21 W lamp", "any 5 W lamp".
    private static double? Watts(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i + 1 < words.Length; i++)
        {
            if (words[i + 1] is "W" or "w" && text.Contains("lamp", StringComparison.OrdinalIgnoreCase)
                && double.TryParse(words[i].Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var watts) && watts is > 0 and < 300)
            {
                return watts;
            }
        }

        return null;
    }
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>A lamp: one filament or LED between two leads, or several elements with a common lead (docs/models/lamp.md).</summary>
internal static class LampKind
{
    private static readonly Parameter Leads = new("leads", "The marks of its leads. Default + and -.", new Form.Names());
    private static readonly Parameter Common = new("common lead", "The lead all elements return through. Default ground, or the last lead.", new Form.Text());

    private static readonly Parameter Elements = new("elements", "What lights in it, each under the name of the lead that feeds it.", new Form.Each(new Form.Keys(
    [
        .. Glow.Parameters,
        new Parameter("from", "The lead that feeds it. Default the one of its own name.", new Form.Text()),
        new Parameter("to", "The lead it returns through. Default the common lead.", new Form.Text()),
    ])));

    public static Kind Kind { get; } = Mount.Able(new(
        "lamp", "A lamp with filaments or LEDs.", [.. Glow.Parameters, Leads, Elements, Common], Build));

    /// <summary>The same thing where it tells the rider something.</summary>
    public static Kind TellTale { get; } = Kind with { Name = "tell-tale", Meaning = "A tell-tale: a small lamp that tells the rider something." };

    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var named = settings.Words("leads");
        var marks = new Marks(named.IsEmpty ? ["+", Mount.IsIn(settings) ? Mount.Case : "-"] : named, "leads");
        marks.FindLeads(settings);
        var lights = Lights(settings, CommonOf(settings, marks), marks);
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, RoleOf(m, lights)))],
            Elements = [.. lights.Select(l => new Element(l.Name.Length == 0 ? "light" : l.Name, l.From, l.To, l.Glow.Curve) { Cold = l.Glow.Cold })],
            Sights = [.. lights.Select(l => new Sight.Lamp(l.Name, l.Name.Length == 0 ? "light" : l.Name, l.Glow.Law))],
            Polarity = marks.Known.Length == 2 && lights is [{ Glow.Law: LightLaw.Led } only] ? (only.From, only.To) : null,
            Problems = marks.Problems,
        };
    }

    private static ImmutableArray<Light> Lights(Settings settings, string common, Marks marks)
    {
        var elements = settings.Group("elements").Entries;
        if (elements.IsEmpty)
        {
            if (marks.Known.Length != 2)
            {
                marks.Complain("elements", $"it has {marks.Known.Length} leads and does not say what lies between them", "name the elements under elements");
                return [];
            }

            var feed = marks.Known[0] == common ? marks.Known[1] : marks.Known[0];
            return Glow.Of(settings, "", marks) is { } glow ? [new Light("", feed, common, glow)] : [];
        }

        if (Glow.IsIn(settings))
        {
            marks.Complain("elements", "what lights is said twice: for the lamp and for its elements", "keep it in elements");
        }

        var lights = ImmutableArray.CreateBuilder<Light>();
        foreach (var (name, value) in elements)
        {
            var own = value is Value.Group group ? group.Entries : Settings.None;
            var path = $"elements/{name}";
            var from = marks.Find(own.Word("from") ?? name, path);
            var to = own.Word("to") is { } other ? marks.Find(other, path) : common;
            if (from is not null && from == to)
            {
                marks.Complain(path, $"{name} begins and ends at {from}", "name under to the lead it returns through");
            }
            else if (from is not null && to is not null && Glow.Of(own, path, marks) is { } glow)
            {
                lights.Add(new Light(name, from, to, glow));
            }
        }

        return lights.ToImmutable();
    }

    private static string CommonOf(Settings settings, Marks marks) =>
        (settings.Word("common lead") is { } given ? marks.Find(given, "common lead") : marks.Known.FirstOrDefault(m => Names.Same(m, "ground") || Names.Same(m, Mount.Case))) ?? marks.Known[^1];

    private static Role RoleOf(string mark, ImmutableArray<Light> lights) =>
        lights.Any(l => l.From == mark) ? Role.Plus : lights.Any(l => l.To == mark) ? Role.Minus : Role.Lead;

    private sealed record Light(string Name, string From, string To, Glow Glow);
}

using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>What a line brings that a first-time builder has not yet seen work: kinds of part and kinds of behaviour, in words.</summary>
internal static class News
{
    public static ImmutableArray<string> Of(Paths paths, Tie load, Output? output, Reach reach, ImmutableArray<string> buttons)
    {
        var news = new List<string> { Kind(paths, load) };
        foreach (var part in reach.Parts.Select(paths.Loom.Part).OfType<Design.Part>())
        {
            var model = paths.Models.GetValueOrDefault(part.Name);
            if (model is { Sights.IsEmpty: true, Controller: null, Supply: null, Protectors.IsEmpty: true, Terminals.Length: > 1, Controls.IsEmpty: true })
            {
                news.Add($"{Fetching.Article(part.Kind)} {part.Kind}");
            }
        }

        news.AddRange(buttons.Select(_ => "a button"));
        if (output is not null)
        {
            news.AddRange(Behaviours(output.When));
        }

        return [.. news.Distinct(StringComparer.Ordinal)];
    }

    private static string Kind(Paths paths, Tie load) =>
        paths.Models[load.Part!.Name].Sights.First(s => Names.Same(load.Element!.Name, s.Element)) switch
        {
            Sight.Lamp { Law: LightLaw.Led } => "an LED lamp",
            Sight.Lamp => "a filament lamp",
            Sight.Horn => "a horn",
            _ => $"{Fetching.Article(load.Part.Kind)} {load.Part.Kind}",
        };

    private static IEnumerable<string> Behaviours(Expression when) => when switch
    {
        Expression.Blinking e => Behaviours(e.Term).Append("a flashing output"),
        Expression.Latching e => Behaviours(e.Term).Append("an output that stays on after the press"),
        Expression.Dimmed e => Behaviours(e.Term).Append("a dimmed output"),
        Expression.Pressed e => Behaviours(e.Term).Append("a long press"),
        Expression.AtPress e => Behaviours(e.Term).Append("an output that acts at the press"),
        Expression.AtMost e => Behaviours(e.Term).Append("an output that ends by itself"),
        Expression.Delayed e => Behaviours(e.Term).Append("an output that comes late"),
        Expression.And e => Behaviours(e.Left).Concat(Behaviours(e.Right)),
        Expression.Or e => Behaviours(e.Left).Concat(Behaviours(e.Right)),
        Expression.Not e => Behaviours(e.Term),
        _ => [],
    };
}

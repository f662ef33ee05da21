using Loomwright.Design;
using Loomwright.Parts;

namespace Loomwright.Web.Picture;

/// <summary>Something the search knows, with the words it is found by.</summary>
/// <param name="Thing">What it is.</param>
/// <param name="Words">Shown and searched: name, colour letters or marks.</param>
internal sealed record Findable(Thing Thing, string Words)
{
    private const int Most = 12;

    /// <summary>Every part, every wire, every marked terminal by its part.</summary>
    public static IReadOnlyList<Findable> All(Loom loom) =>
    [
        .. loom.Parts.Select(p => new Findable(new(Thing.Part, p.Name), p.Name)),
        .. loom.Wires.Select(w => new Findable(new(Thing.Wire, w.Name), $"{w.Name}, {w.Colour?.ToString() ?? "?"} {w.Size}")),
        .. loom.Parts.SelectMany(p => Bike.Model(p).Terminals.Where(t => t.Mark.Length > 0).Select(t => new Findable(new(Thing.Part, p.Name), Marked(p, t)))),
    ];

    /// <summary>Those that hold every word typed; what begins with them first.</summary>
    public static IReadOnlyList<Findable> Search(IEnumerable<Findable> all, string typed)
    {
        var words = typed.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0 ? [] : [.. all
            .Where(f => words.All(w => f.Words.Contains(w, StringComparison.OrdinalIgnoreCase)))
            .OrderBy(f => f.Words.StartsWith(typed.Trim(), StringComparison.OrdinalIgnoreCase) ? 0 : 1)
            .Take(Most)];
    }

    private static string Marked(Part part, Terminal terminal) => terminal.Name is null ? $"{part.Name} {terminal.Mark}" : $"{part.Name} {terminal.Mark}, {terminal.Name}";
}

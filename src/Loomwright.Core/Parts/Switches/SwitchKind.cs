using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>A switch or a lock: what its contact table says (docs/models/switch.md).</summary>
internal static class SwitchKind
{
    private static readonly Parameter Terminals = new("terminals", "The marks of its leads.", new Form.Names()) { Required = true };

    private static readonly Parameter Positions = new(
        "positions", "Each position in the order they are reached, and the pairs of leads joined in it; an empty list joins none.", new Form.Each(new Form.Pairs())) { Required = true };

    private static readonly Parameter Rest = new("rest", "The position nobody has touched it in. Default the first.", new Form.Text());
    private static readonly Pick Action = new("action", "Whether it stays where it is put or springs back to rest.", ["stays", "springs back"]);

    public static Kind Kind { get; } = new(
        "switch", "A switch or lock described by its contact table.", [Terminals, Positions, Rest, Action.Parameter, Contact.Closed.Parameter, Contact.Leak.Parameter], Build);

    private static Model Build(Part part)
    {
        var marks = new Marks(part.Settings.Words("terminals"), "terminals");
        marks.FindLeads(part.Settings);
        var positions = part.Settings.Group("positions").Entries;
        ImmutableArray<string> names = [.. positions.Select(p => p.Key)];
        if (names.Length < 2)
        {
            marks.Complain("positions", "a switch needs at least two positions", "add a position with an empty list for where nothing is joined");
        }

        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements = Contacts(part, positions, marks),
            Controls = names.IsEmpty ? [] : [new Control(part.Name, names, RestOf(part.Settings, names, marks), Action.Of(part.Settings) == "springs back")],
            Problems = marks.Problems,
            Unmarked = marks.Known.Length > 2,
        };
    }

    // One contact for each pair of leads that is joined anywhere, closed in all positions that join it.
    private static ImmutableArray<Element> Contacts(Part part, ImmutableArray<KeyValuePair<string, Value>> positions, Marks marks)
    {
        var closedIn = new Dictionary<(string A, string B), List<string>>();
        foreach (var (position, value) in positions)
        {
            foreach (var (a, b) in value is Value.Pairs pairs ? pairs.Joined : [])
            {
                if (PairOf(a, b, $"positions/{position}", marks) is { } pair)
                {
                    closedIn.TryAdd(pair, []);
                    closedIn[pair].Add(position);
                }
            }
        }

        var ohms = Contact.Closed.Of(part.Settings);
        return [.. closedIn.Select(c => new Element($"{c.Key.A} to {c.Key.B}", c.Key.A, c.Key.B, new Ohms(ohms)) { Gate = new Gate.ByControl(part.Name, [.. c.Value.Distinct()]), Off = Contact.Open(part.Settings) })];
    }

    // In the order of the terminals, so that [s, r] and [r, s] are one contact.
    private static (string A, string B)? PairOf(string a, string b, string path, Marks marks)
    {
        var (first, second) = (marks.Find(a, path), marks.Find(b, path));
        if (first is null || second is null)
        {
            return null;
        }

        if (first == second)
        {
            marks.Complain(path, $"{first} is joined to itself", "name two different leads");
            return null;
        }

        return marks.Known.IndexOf(first) < marks.Known.IndexOf(second) ? (first, second) : (second, first);
    }

    private static string RestOf(Settings settings, ImmutableArray<string> names, Marks marks)
    {
        if (settings.Word("rest") is not { } rest)
        {
            return names[0];
        }

        if (names.FirstOrDefault(n => Names.Same(n, rest)) is { } named)
        {
            return named;
        }

        marks.Complain("rest", $"there is no position {rest}", Marks.Cure(rest, names, "name one of the positions"));
        return names[0];
    }
}

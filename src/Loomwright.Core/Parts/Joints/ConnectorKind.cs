using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A plug and its socket: a contact for each cavity (docs/models/connector.md).</summary>
internal static class ConnectorKind
{
    private static readonly Parameter Cavities = new("cavities", "The marks of its cavities, in the order they stand in it: neighbours here are neighbours there.", new Form.Names()) { Required = true };
    private static readonly Amount Size = new("terminal size", "Width of its contacts; their resistance follows from it.", Unit.Metre, 0.0003, 0.02, 0.0028);

    public static Kind Kind { get; } = new(
        "connector", "A plug and its socket; each cavity has a side a and a side b, as in 1a and 1b.", [Cavities, Size.Parameter], Build);

    private static Model Build(Part part)
    {
        var marks = new Marks(part.Settings.Words(Cavities.Key), Cavities.Key);
        var contact = new Ohms(Termination.Contact(Size.Of(part.Settings) * 1000).Ohms);
        ImmutableArray<string> cavities = [.. marks.Known.Where(m => m.Length > 0)];
        return new Model
        {
            Terminals = [.. cavities.Select(c => new Terminal($"{c}a", Role.Lead, null, "a")), .. cavities.Select(c => new Terminal($"{c}b", Role.Lead, null, "b"))],
            Elements = [.. cavities.Select(c => new Element($"cavity {c}", $"{c}a", $"{c}b", contact))],
            Problems = marks.Problems,
            DeadBy = "plug left apart",
        };
    }
}

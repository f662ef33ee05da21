using System.Collections.Immutable;
using Loomwright.Parts;

namespace Loomwright.ProjectFile;

/// <summary>What may stand in a case file; the reader reads by it and the published schema is made from it.</summary>
internal static class CaseGrammar
{
    /// <summary>Keys with one text each.</summary>
    public static ImmutableArray<Parameter> Words { get; } =
    [
        new("account", "Title of the account.", new Form.Text()) { Required = true },
        new("grade", "C: cause found and the repair worked. R: a maker's recall finding. H: a rule told by a tradesperson or a club.", new Form.Choice(["C", "R", "H"])) { Required = true },
        new("notes", "How the account was put into the circuit; what was judged says so.", new Form.Text()),
    ];

    /// <summary>Keys with a list of texts each.</summary>
    public static ImmutableArray<Parameter> Lists { get; } =
    [
        new("cause", "Text ids of the faults that were there together, as in “open: rear ground”.", new Form.Names()) { Required = true },
        new("accept", "Repairs that count as naming the cause.", new Form.Names()) { Required = true },
        new("named by", "Text ids of faults the catalogue lists whose repair is that work, where it does not list the cause itself.", new Form.Names()),
    ];

    /// <summary>The list of what was seen.</summary>
    public static Parameter Saw { get; } = new("saw", "What was seen, each time with power connected anew.", new Form.Names()) { Required = true };

    /// <summary>Keys of what was seen that hold a list of texts each.</summary>
    public static ImmutableArray<Parameter> SightingLists { get; } =
    [
        new("do", "Operations in order: “lock=riding”, “wait 3 s”. Empty: nothing was touched.", new Form.Names()) { Required = true },
        new("mended", "Those of the causes that were mended by then.", new Form.Names()),
    ];

    /// <summary>The map of what was seen there.</summary>
    public static Parameter See { get; } = new(
        "see", "A part, part.element, wire, or two terminals with “to” between them, or “any of” and several of these, of which at least one; and what was seen or read there, one text or several.", new Form.Names()) { Required = true };
}

using System.Collections.Immutable;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.ProjectFile;

/// <summary>What may stand in a design file outside the kinds' own settings. The reader reads by it and the published schema is made from it.</summary>
internal static class Grammar
{
    /// <summary>The version this program reads and writes.</summary>
    public const string Version = "1";

    private static readonly Form Text = new Form.Text();

    /// <summary>Keys at the left edge, in the order documented. Sections below them are declared by the other members.</summary>
    public static ImmutableArray<Parameter> File { get; } =
    [
        new("loomwright", "Version of the file format: 1.", new Form.Choice([Version])) { Required = true },
        new("name", "The bike's name.", Text) { Required = true },
        new("notes", "Anything worth remembering about the bike.", Text),
        new("ground", "The battery side that is joined to the frame. Left out: negative.", new Form.Choice(["negative", "positive"])),
        new("conditions", "What the surroundings are taken to be.", new Form.Keys(Conditions)),
        new("places", "Where things sit, each under a short name.", new Form.Each(new Form.Keys(Place))),
        new("distances", "How far a wire runs between two places.", Text),
        new("parts", "What the bike has, each under your name for it.", Text),
        new("wires", "Every wire from terminal to terminal.", Text),
        new("functions", "What must work, when, and what is then seen.", Text),
        new("bench", "What stands in for what while things lie on the bench.", Text),
        new("layout", "Where the boxes stand in the picture; written by the tool.", Text),
    ];

    public static ImmutableArray<Parameter> Conditions =>
    [
        new("ambient", "Air around the loom. Left out: 20 C.", new Form.Quantity(Unit.Celsius, -40, 80)),
        new("insulation", "Temperature class of the wire's insulation. Left out: 105 C.", new Form.Quantity(Unit.Celsius, 60, 260)),
        new("ampacity rule", "The rule wires are sized by. Left out: metric practice.", Text),
        new("bundle", "Loaded wires that run together. Left out: 1.", new Form.Quantity(Unit.One, 1, 200)),
        new("drop limit", "Largest share of the supply voltage lost in feed and return together (3 % both ways), or in each of them (2 % one way). Left out: 3 % both ways.", Text),
        new("country", "For notes that depend on law; unset when nothing is said.", Text),
    ];

    public static ImmutableArray<Parameter> Place =>
    [
        new("name", "How it is called on the screen. Left out: the short name.", Text),
        new("heat", "Cool is the ambient, warm 15 K above it, hot 40 K above it. Left out: cool.", new Form.Choice(["cool", "warm", "hot"])),
        new("moves", "What it moves with. Left out: it is still.", new Form.Choice(["steering", "suspension", "engine"])),
        new("notes", "Anything worth remembering.", Text),
    ];

    public static ImmutableArray<Parameter> Distance =>
    [
        new("between", "Two places.", new Form.Names()) { Required = true },
        new("length", "How far a wire runs from one to the other.", new Form.Quantity(Unit.Metre, 0.01, 50)) { Required = true },
    ];

    /// <summary>What may be said of a part of any kind.</summary>
    public static ImmutableArray<Parameter> AnyPart =>
    [
        new("kind", "What it is.", Text) { Required = true },
        new("place", "Where it sits: the short name of a place.", Text),
        new("described in", "Where its terminals and settings are told.", Text),
        new("notes", "Anything worth remembering.", Text),
        new("lead colours", "The colour of each of its own leads.", new Form.Each(Text)),
        new("unused", "Leads that are capped and not used.", new Form.Names()),
        new("bought", "Price, where, why, and what it replaces.", new Form.Keys(
        [
            new("price", "What was paid, a plain number.", new Form.Quantity(Unit.One, 0, 1e6)),
            new("at", "Where.", Text),
            new("why", "Why this one.", Text),
            new("instead of", "What else would do.", Text),
        ])),
    ];

    public static ImmutableArray<Parameter> Wire =>
    [
        new("name", "Unique. Left out: made from the ends, “box X4 to rear cluster stop”.", Text),
        new("from", "The terminal it begins at: part.terminal.", Text) { Required = true },
        new("to", "The terminal it ends at.", Text) { Required = true },
        new("size", "Nominal cross-section: 0.5 mm2 or 20 AWG.", new Form.Quantity(Unit.SquareMillimetre, 0.05, 120)) { Required = true },
        new("colour", "Base and tracer in IEC 60757 or German letters: GN/WH.", Text),
        new("length", "Left out: the way between the places + 10 %, or 0.3 m inside one place.", new Form.Quantity(Unit.Metre, 0.01, 50)),
        new("ends", "How each end is made.", new Form.Keys([new("from", "The first end.", Text), new("to", "The second end.", Text)])),
        new("notes", "Anything worth remembering.", Text),
    ];

    public static ImmutableArray<Parameter> Function =>
    [
        new("works", "When it works, in the small language over control positions.", new Form.Condition()) { Required = true },
        new("shows", "What is then seen: a part or part.element, and lit, dim, dark, flashing, sounds, silent, turns, works or rests.", Text),
        new("may", "What may be seen besides.", Text),
        new("notes", "Anything worth remembering.", Text),
    ];

    /// <summary>The keys of a function that are plain words; what it shows is read beside the parts.</summary>
    internal static ImmutableArray<Parameter> FunctionWords { get; } = [.. Function.Where(p => p.Key is not ("shows" or "may"))];

    public static ImmutableArray<Parameter> StandIn =>
    [
        new("this", "What is used: a lead, a 21 W lamp.", Text) { Required = true },
        new("for", "The part it replaces.", Text) { Required = true },
    ];

    /// <summary>What can be seen or heard.</summary>
    public static ImmutableArray<string> Symbols { get; } = ["lit", "dim", "dark", "flashing", "sounds", "silent", "turns", "works", "rests"];
}

namespace Loomwright.Long.Outfit;

/// <summary>One thing an output feeds.</summary>
/// <param name="Feed">The terminal fed, <c>headlamp.dip</c>.</param>
/// <param name="Plugs">On the way there.</param>
internal sealed record Fed(string Feed, string[] Plugs);

/// <summary>One output of a box with everything on it.</summary>
/// <param name="When">Over the inputs of the box.</param>
/// <param name="Works">The same over the controls.</param>
/// <param name="Symbol">What it then does.</param>
internal sealed record Output(string Name, string When, string Works, string Symbol, double SquareMillimetres, string Colour, string[] Shows, Fed[] Fed)
{
    private const string Limits = "limit: 15 A, trips after: 400 ms";

    /// <summary>The box's settings: plugs, inputs by name, plus first, and outputs.</summary>
    public static string Box(string awake, string[] plus, string[] ground, Output[] outputs)
    {
        string[] inputs = [.. plus, .. ground];
        return $$"""
                plugs:
                  P: [B+, B-]
                  X: [{{Marks("X", outputs.Length)}}]
                  Y: [{{Marks("Y", inputs.Length)}}]
                supply: B+
                ground: B-
                awake: {{awake}}
                total limit: 60 A
                inputs:
            {{Lines(inputs, (name, i) => FormattableString.Invariant($"{name}: {{terminal: Y{i + 1}, active: {(i < plus.Length ? "plus" : "ground")}}}"))}}    outputs:
            {{Lines(outputs, (output, i) => FormattableString.Invariant($"{output.Name}: {{terminal: X{i + 1}, when: \"{output.When}\", {Limits}}}"))}}
            """;
    }

    /// <summary>Its wires: straight to the one thing it feeds, or over a splice to several.</summary>
    public void Wire(Sheet sheet, string terminal, string place)
    {
        if (Fed is [var only])
        {
            sheet.Lead($"{Name} feed", terminal, only.Feed, SquareMillimetres, Colour, only.Plugs);
        }
        else
        {
            var splice = $"{Name} splice";
            sheet.Part(splice, "splice", place);
            sheet.Lead(Name, terminal, splice, SquareMillimetres, Colour);
            foreach (var fed in Fed)
            {
                sheet.Lead($"{fed.Feed.Replace('.', ' ')} feed", splice, fed.Feed, SquareMillimetres, Colour, fed.Plugs);
            }
        }

        sheet.Function(Name, Works, Symbol, Shows);
    }

    private static string Marks(string letter, int count) => string.Join(", ", Enumerable.Range(1, count).Select(n => FormattableString.Invariant($"{letter}{n}")));

    private static string Lines<T>(T[] items, Func<T, int, string> line) => string.Concat(items.Select((item, i) => $"      {line(item, i)}\n"));
}

using System.Collections.Immutable;
using System.Reflection;

namespace Loomwright.Findings;

/// <summary>The page that explains one kind of finding: what is seen, why it matters, what to do, an example.</summary>
/// <param name="Code">The finding's code.</param>
/// <param name="Text">The whole page, Markdown, as published under <c>docs/findings/</c>.</param>
public sealed record Page(string Code, string Text)
{
    private const string Folder = "findings/";
    private const string Ending = ".md";

    /// <summary>Every page, by code.</summary>
    public static ImmutableArray<Page> All { get; } = ReadAll();

    /// <summary>The page of a code, or null when there is no such code.</summary>
    public static Page? Find(string code) => All.FirstOrDefault(p => string.Equals(p.Code, code.Trim(), StringComparison.OrdinalIgnoreCase));

    private static ImmutableArray<Page> ReadAll()
    {
        var core = typeof(Page).Assembly;
        return
        [
            .. core.GetManifestResourceNames()
                .Where(n => n.StartsWith(Folder, StringComparison.Ordinal) && n.EndsWith(Ending, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(n => new Page(n[Folder.Length..^Ending.Length], Read(core, n))),
        ];
    }

    private static string Read(Assembly core, string name)
    {
        using var stream = core.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}

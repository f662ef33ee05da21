using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>A case file as read, and everything that is wrong with it.</summary>
/// <param name="Case">Null when something stopped the reading.</param>
/// <param name="Findings">In file order, each about a stretch of the text.</param>
internal sealed record CaseFile(Case? Case, ImmutableArray<Finding> Findings)
{
    /// <summary>Reads a case file. Never throws.</summary>
    public static CaseFile Read(SourceText text)
    {
        var found = new Found();
        var root = Tree.Read(text, found);
        var told = Read(root, found);
        var findings = found.InFileOrder();
        return new CaseFile(findings.Any(f => f.Severity == Severity.Stop) ? null : told, findings);
    }

    private static Case Read(Node.Map root, Found found)
    {
        const string owner = "the case";
        var words = FormReader.Keys(Without(root, [.. CaseGrammar.Lists, CaseGrammar.Saw]), CaseGrammar.Words, owner, found);
        FormReader.Missing(root, [.. CaseGrammar.Lists, CaseGrammar.Saw], owner, found);
        return new Case(
            words.Word("account") ?? "",
            words.Word("grade") ?? "",
            Lines(root, "cause", found),
            [.. Sections.List(root.Find("saw")?.Value, "saw", found).Select(s => Sighting(s, found)).OfType<Sighting>()],
            Lines(root, "accept", found),
            Lines(root, "named by", found),
            words.Word("notes"));
    }

    private static Sighting? Sighting(Node node, Found found)
    {
        const string owner = "what was seen";
        if (node is not Node.Map map)
        {
            FormReader.WrongShape(node, owner, "do and see, one below the other", found);
            return null;
        }

        FormReader.Keys(Without(map, [.. CaseGrammar.SightingLists, CaseGrammar.See]), [], owner, found);
        FormReader.Missing(map, [.. CaseGrammar.SightingLists, CaseGrammar.See], owner, found);
        var see = Sections.Map(map.Find("see")?.Value, "see", found).Select(e => new Told(e.Key.Text.Trim(), Texts(e.Value, e.Key.Text, found)));
        return new Sighting(Lines(map, "do", found), [.. see], Lines(map, "mended", found));
    }

    private static Node.Map Without(Node.Map map, ImmutableArray<Parameter> keys) =>
        map with { Entries = map.Entries.RemoveAll(e => keys.Any(k => Names.Same(k.Key, e.Key.Text))) };

    private static ImmutableArray<string> Lines(Node.Map map, string key, Found found) =>
        map.Find(key) is { } entry ? Texts(entry.Value, key, found) : [];

    private static ImmutableArray<string> Texts(Node node, string key, Found found) =>
        [.. (node is Node.List list ? list.Items : [node]).Select(n => FormReader.Word(n, key, found)).OfType<Node.Scalar>().Select(w => w.Text.Trim())];
}

using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.ProjectFile;

namespace Loomwright.Tests.ProjectFile;

/// <summary>docs/format.md, held to what the reader does.</summary>
public sealed class FormatPageTests
{
    private const string Page = "docs/format.md";

    public static TheoryData<string> Snippets =>
        [.. Pages.Read(Page).ReplaceLineEndings("\n").Split("```yaml\n").Skip(1).Select(s => s[..s.IndexOf("```", StringComparison.Ordinal)])];

    [Theory]
    [MemberData(nameof(Snippets))]
    public void Every_snippet_is_read_without_a_finding(string snippet)
    {
        var file = Written.File(snippet);
        Assert.Equal("", Written.Shown(file.Text, file.Findings));
        Assert.True(file.IsComplete);
    }

    [Fact]
    public void The_page_names_every_kind_with_what_it_must_say()
    {
        var rows = Pages.Table(Page, "Parts").TakeWhile(r => r[0] != "key").ToDictionary(r => r[0], r => r[2], StringComparer.Ordinal);
        foreach (var kind in Kinds.All)
        {
            Assert.True(rows.TryGetValue(kind.Name, out var must), $"{kind.Name} is not on the page");
            Assert.Equal(kind.Parameters.Where(p => p.Required).Select(p => p.Key), must.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(m => m.Trim('`')));
        }
    }

    [Fact]
    public void The_page_names_every_key_of_the_grammar()
    {
        var page = Pages.Read(Page);
        var declared = new[] { Grammar.File, Grammar.Conditions, Grammar.Place, Grammar.Distance, Grammar.AnyPart, Grammar.Wire, Grammar.Function, Grammar.StandIn }.SelectMany(p => p).Select(p => p.Key);
        Assert.All(declared, key => Assert.True(page.Contains(key + ":", StringComparison.Ordinal) || page.Contains($"`{key}`", StringComparison.Ordinal), key));
    }

    [Fact]
    public void The_colour_table_is_the_one_that_is_read() => Assert.All(Pages.Table(Page, "Wires"), row =>
    {
        Assert.Equal(row[1].Trim('`'), WireColours.Read(row[1].Trim('`'))?.ToString());
        Assert.Equal(row[0], WireColours.InWords(WireColours.Read(row[1].Trim('`'))!.Value));
        Assert.True(row[2].Length == 0 || WireColours.Read(row[2].Trim('`')) == WireColours.Read(row[1].Trim('`')));
    });
}

using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.ProjectFile;

public sealed class TreeTests
{
    [Fact]
    public void Words_stay_as_they_were_written()
    {
        var tree = Written.Tree("a: off\nb: 30\nc: 1e3\nd: yes\ne: \"off\"\nf: ~\ng: 0x1F\nh: 12,4 V\n");
        Assert.Empty(tree.Findings);
        Assert.Equal("{a: off, b: 30, c: 1e3, d: yes, e: off, f: ~, g: 0x1F, h: 12,4 V}", Written.Shown(tree.Root));
    }

    [Theory]
    [InlineData("\uFEFF")]
    [InlineData("")]
    public void Every_node_knows_its_exact_characters_whatever_mark_or_line_ends_the_file_has(string mark)
    {
        var content = mark + "a: 'x'  # c\r\n\r\nb:\r\n  - {k: v, l: [1, 2]}\r\n  - \"q\"\r\nc: |\r\n  hi\r\n\r\nd:\r\ne: two\r\n  lines\r\n";
        var tree = Written.Tree(content);
        Assert.Empty(tree.Findings);
        string At(Node node) => content.Substring(node.Span.Start, node.Span.Length);
        string[] keys = ["a", "b", "c", "d", "e"];
        Assert.Equal(keys, tree.Root.Entries.Select(e => At(e.Key)));
        Assert.Equal("'x'", At(tree.Root.Find("a")!.Value));
        var list = (Node.List)tree.Root.Find("b")!.Value;
        Assert.Equal("- {k: v, l: [1, 2]}\r\n  - \"q\"", At(list));
        Assert.Equal("{k: v, l: [1, 2]}", At(list.Items[0]));
        Assert.Equal("[1, 2]", At(((Node.Map)list.Items[0]).Find("l")!.Value));
        Assert.Equal("|\r\n  hi", At(tree.Root.Find("c")!.Value));
        Assert.Equal("", At(tree.Root.Find("d")!.Value));
        Assert.Equal("two\r\n  lines", At(tree.Root.Find("e")!.Value));
    }

    [Theory]
    [InlineData("a: &x 1\n", "plain-yaml-only 1:4")]
    [InlineData("a: 1\nb: *x\n", "plain-yaml-only 2:4")]
    [InlineData("a: !t 1\n", "plain-yaml-only 1:4")]
    [InlineData("a:\n  <<: {b: 1}\n", "plain-yaml-only 2:3")]
    [InlineData("%YAML 1.2\n---\na: 1\n", "plain-yaml-only 1:1")]
    [InlineData("[a, b]: 1\n", "plain-yaml-only 1:1")]
    [InlineData("a:\n\tb: 1\n", "tab-in-indentation 2:1")]
    [InlineData("a: 1\nB: 2\nA: 3\n", "said-twice 3:1")]
    [InlineData("stop  lamp: 1\nStop lamp: 2\n", "said-twice 2:1")]
    [InlineData("a: 1\n---\nb: 2\n", "second-document 2:1")]
    [InlineData("a: {led: 0,4 W}\n", "split-at-comma 1:12")]
    [InlineData("a: b\u0007\n", "hidden-character 1:5")]
    [InlineData("a: \u0000b\n", "hidden-character 1:4")]
    [InlineData("- a\n- b\n", "keys-expected 1:1")]
    [InlineData("just a text\n", "keys-expected 1:1")]
    public void What_plain_files_do_not_use_is_refused_at_its_place(string content, string expected)
    {
        var tree = Written.Tree(content);
        Assert.Equal([expected], Written.Codes(tree.Text, tree.Findings));
    }

    [Theory]
    [InlineData("a: x: y", "second-colon")]
    [InlineData("a: 'x", "quote-left-open")]
    [InlineData("a: \"x\\q\"", "quote-left-open")]
    [InlineData("a: @x", "sign-needs-quotes")]
    [InlineData("a: `x`", "sign-needs-quotes")]
    [InlineData("a: {x: 1", "bracket-left-open")]
    [InlineData("a: [x, y", "bracket-left-open")]
    [InlineData("a: [x, y}", "bracket-left-open")]
    [InlineData("a:\n    b: 1\n  c: 2", "indentation")]
    [InlineData("a:\n  b: 1\n  d", "colon-missing")]
    public void A_slip_of_writing_costs_its_own_block_and_nothing_else(string broken, string code)
    {
        var tree = Written.Tree($"first: 1\n{broken}\nlast:\n  - z\n");
        Assert.Equal(code, Assert.Single(tree.Findings).Code);
        Assert.Equal("1", ((Node.Scalar)tree.Root.Find("first")!.Value).Text);
        Assert.Equal("[z]", Written.Shown(tree.Root.Find("last")!.Value));
    }

    [Fact]
    public void One_broken_item_among_many_leaves_the_others()
    {
        var tree = Written.Tree("parts:\n  lock:\n    kind: 'switch\n  horn:\n    kind: horn\nwires:\n  - from: a.b\n  - from: [a\n  # a comment\n  - from: c.d\n");
        Assert.Equal(["quote-left-open 3:11", "bracket-left-open 10:1"], Written.Codes(tree.Text, tree.Findings));
        Assert.Equal("{parts: {lock: {}, horn: {kind: horn}}, wires: [{from: a.b}, {from: c.d}]}", Written.Shown(tree.Root));
    }

    [Theory]
    [InlineData('[')]
    [InlineData('{')]
    public void Deep_nesting_is_refused_in_good_time(char bracket)
    {
        var tree = Written.Tree("name: x\na: " + new string(bracket, 200_000) + "\nb: 1\n");
        Assert.Contains(tree.Findings, f => f.Code is "too-deep" or "bracket-left-open");
        Assert.NotNull(tree.Root.Find("name"));
    }

    [Fact]
    public void A_file_far_too_large_for_a_bike_is_not_read()
    {
        var tree = Written.Tree(new string('a', Loomwright.ProjectFile.Tree.MostCharacters + 1));
        Assert.Equal("file-too-large", Assert.Single(tree.Findings).Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n# only a comment\n")]
    [InlineData("\uFEFF")]
    public void An_empty_file_has_an_empty_tree(string content) => Assert.Empty(Written.Tree(content).Root.Entries);

    [Theory]
    [InlineData("  fuse\n    kind: fuse\n    rating: 10 A\n", 1)]
    [InlineData("  fuse:\n\tkind: fuse\n    rating: 10 A\n", 2)]
    public void A_part_lost_to_a_slip_of_writing_is_not_told_again_at_every_wire_that_ends_on_it(string fuse, int stops)
    {
        var file = DesignFile.Read(new SourceText("slip", "loomwright: 1\nname: Slip\nparts:\n  battery:\n    kind: battery\n    chemistry: agm\n    capacity: 10 Ah\n" + fuse
            + "wires:\n  - from: battery.+\n    to: fuse.1\n    size: 1 mm2\n    length: 1 m\n  - from: fuse.2\n    to: lamp.+\n    size: 1 mm2\n    length: 1 m\n"));
        Assert.Equal(stops, file.Findings.Count(f => f.Severity == Loomwright.Findings.Severity.Stop));
        Assert.DoesNotContain(file.Findings, f => f.Code == "unknown-part");
        Assert.False(file.IsComplete);
    }
}

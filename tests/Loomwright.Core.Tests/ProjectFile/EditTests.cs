using Loomwright.ProjectFile;

namespace Loomwright.Tests.ProjectFile;

public sealed class EditTests
{
    private const string Head = "loomwright: 1\n";

    private static NodePath At(params object[] steps) =>
        steps.Aggregate(NodePath.Root, (path, step) => step is int item ? path.Item(item) : path.Key((string)step));

    private static Node.Map Pairs(params string[] words) =>
        new([.. words.Chunk(2).Select(p => new Entry(Node.Word(p[0]), Node.Word(p[1])))], default, Flow: false);

    private static string After(string content, params Edit[] edits)
    {
        var outcome = Editor.Apply(Written.Tree(Head + content), edits);
        var edited = Assert.IsType<EditOutcome.Edited>(outcome);
        Assert.StartsWith(Head, edited.Text.Content, StringComparison.Ordinal);
        return edited.Text.Content[Head.Length..];
    }

    [Fact]
    public void A_value_changes_and_its_comment_and_neighbours_stay() => Assert.Equal(
        "a: 2   # about a\n\n# above b\nb: 3\n",
        After("a: 1   # about a\n\n# above b\nb: 3\n", new Edit.Replace(At("a"), Node.Word("2"))));

    [Fact]
    public void Line_ends_and_the_mark_at_the_start_stay_as_they_were()
    {
        var outcome = Editor.Apply(Written.Tree("\uFEFFloomwright: 1\r\na:\r\n  b: 1\r\n"), new Edit.AddKey(At("a"), "c", Pairs("d", "e")));
        Assert.Equal("\uFEFFloomwright: 1\r\na:\r\n  b: 1\r\n  c:\r\n    d: e\r\n", Assert.IsType<EditOutcome.Edited>(outcome).Text.Content);
    }

    [Fact]
    public void A_key_is_added_below_the_last_with_the_same_indentation() => Assert.Equal(
        "a:\n    b: 1  # c\n    d: 2\n# below\n",
        After("a:\n    b: 1  # c\n# below\n", new Edit.AddKey(At("a"), "d", Node.Word("2"))));

    [Fact]
    public void A_name_is_added_first_beside_the_dash() => Assert.Equal(
        "wires:\n  - name: feed\n    from: a  # x\n    to: b\n",
        After("wires:\n  - from: a  # x\n    to: b\n", new Edit.AddKey(At("wires", 0), "name", Node.Word("feed"), First: true)));

    [Fact]
    public void An_item_is_added_to_a_list_and_to_nothing()
    {
        Assert.Equal("a:\n  - x: 1\n    y: 2\n  - x: 3\nb: 1\n", After("a:\n  - x: 1\n    y: 2\nb: 1\n", new Edit.AddItem(At("a"), Pairs("x", "3"))));
        Assert.Equal("a:\n- 1\n- 2\nb: 1\n", After("a:\n- 1\nb: 1\n", new Edit.AddItem(At("a"), Node.Word("2"))));
        Assert.Equal("a:  # none yet\n  - x: 3\nb: 1\n", After("a:  # none yet\nb: 1\n", new Edit.AddItem(At("a"), Pairs("x", "3"))));
    }

    [Fact]
    public void What_is_removed_takes_its_own_lines_and_no_other()
    {
        Assert.Equal("a: 1\n# above c\nc: 3\n", After("a: 1\nb:\n  x: 1  # x\n# above c\nc: 3\n", new Edit.Remove(At("b"))));
        Assert.Equal("a:\n  - x: 1\n", After("a:\n  - x: 1\n  - y: 2\n    z: 3\n", new Edit.Remove(At("a", 1))));
        Assert.Equal("a:\n  - y: 2\n", After("a:\n  - x: 1\n    y: 2\n", new Edit.Remove(At("a", 0, "x"))));
        Assert.Equal("a:\n  -\n    # about y\n    y: 2\n", After("a:\n  - x: 1\n    # about y\n    y: 2\n", new Edit.Remove(At("a", 0, "x"))));
        Assert.Equal("a: []  # list\nb: 1\n", After("a:  # list\n  - x\nb: 1\n", new Edit.Remove(At("a", 0))));
    }

    [Fact]
    public void Short_braces_are_edited_in_place()
    {
        Assert.Equal("a: {b: 2, c: 3}  # x\n", After("a: {b: 1, c: 3}  # x\n", new Edit.Replace(At("a", "b"), Node.Word("2"))));
        Assert.Equal("a: {b: 1, c: \"0,5\"}\n", After("a: {b: 1}\n", new Edit.AddKey(At("a"), "c", Node.Word("0,5"))));
        Assert.Equal("a: {c: 3}\n", After("a: {b: 1, c: 3}\n", new Edit.Remove(At("a", "b"))));
        Assert.Equal("a: [b, c, d]\n", After("a: [b, c]\n", new Edit.AddItem(At("a"), Node.Word("d"))));
        Assert.Equal("a: {}\n", After("a: {b: 1}\n", new Edit.Remove(At("a", "b"))));
    }

    [Fact]
    public void Long_braces_become_lines_and_nothing_else_is_touched()
    {
        var longText = new string('x', 70);
        Assert.Equal(
            $"z: {{q: 1}}\na:  # list\n  - b: {longText}\n    c: {longText}\n    d: 1\n  - {{e: 1}}\n",
            After($"z: {{q: 1}}\na:  # list\n  - {{b: {longText}, c: {longText}}}\n  - {{e: 1}}\n", new Edit.AddKey(At("a", 0), "d", Node.Word("1"))));
    }

    [Fact]
    public void Braces_with_a_comment_in_them_become_lines_and_the_comment_stays() => Assert.Equal(
        "a:\n  # about b\n  b: 2\n  c: 3\nd: 4\n",
        After("a: {\n  b: 1,  # about b\n  c: 3\n  }\nd: 4\n", new Edit.Replace(At("a", "b"), Node.Word("2"))));

    [Fact]
    public void A_word_that_would_be_read_as_something_else_is_quoted()
    {
        string[] words = ["off", "a: b", "a # b", "#x", "- x", "", " x", "x ", "'q'", "\"q\"", "[x", "{x", "@x", "&x", "*x", "!x", "%x", "a:", "two\nlines", "tab\there", "x\u0085y", "a\\b", "<<", "...", "? x", "-", "~", "1e3", "-5 mV", "GN/WH", "box.X4"];
        foreach (var word in words)
        {
            After("a: 1\n", new Edit.Replace(At("a"), Node.Word(word)));
            After("a: {b: 1}\n", new Edit.Replace(At("a", "b"), Node.Word(word)));
            After("a: 1\n", new Edit.AddKey(NodePath.Root, word + "k", Node.Word(word)));
        }
    }

    [Fact]
    public void A_file_of_a_later_version_is_never_written() =>
        Assert.IsType<EditOutcome.Refused>(Editor.Apply(Written.Tree("loomwright: 2\na: 1\n"), new Edit.Replace(At("a"), Node.Word("2"))));

    [Theory]
    [InlineData("b")]
    [InlineData("a/b")]
    public void What_is_not_there_cannot_be_changed(string path) =>
        Assert.IsType<EditOutcome.Refused>(Editor.Apply(Written.Tree(Head + "a: 1\n"), new Edit.Replace(At([.. path.Split('/')]), Node.Word("2"))));

    [Fact]
    public void Replacements_lead_from_the_old_text_to_the_new()
    {
        var tree = Written.Tree(Head + "a: 1\nb: {c: 1}\n");
        var edited = Assert.IsType<EditOutcome.Edited>(Editor.Apply(tree, new Edit.Replace(At("a"), Node.Word("22")), new Edit.AddKey(At("b"), "d", Node.Word("2"))));
        var text = tree.Text.Content;
        foreach (var (span, put) in edited.Replacements.Reverse())
        {
            text = text.Remove(span.Start, span.Length).Insert(span.Start, put);
        }

        Assert.Equal(text, edited.Text.Content);
        Assert.Equal(2, edited.Replacements.Length);
    }
}

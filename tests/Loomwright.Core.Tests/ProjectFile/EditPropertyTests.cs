using System.Globalization;
using Loomwright.ProjectFile;

namespace Loomwright.Tests.ProjectFile;

/// <summary>Random files in random styles, random edits: the tree read back is the one a dumb model gives, and every line outside the edited place is byte for byte the same.</summary>
public sealed class EditPropertyTests
{
    internal static readonly string[] Words = ["a", "box.X4", "off", "12,4 V", "two words", "x: y", "# no", "it's", "GN/WH", "-", "{", "", "é 🏍", "1e3", "\"q\"", "a, b"];

    [Theory]
    [InlineData(0, 4000)]
    public void Any_edit_reads_back_as_meant_and_leaves_every_other_line_alone(int firstSeed, int count)
    {
        for (var seed = firstSeed; seed < firstSeed + count; seed++)
        {
            var random = new Random(seed);
            var text = new Scribe(random).File();
            var tree = Written.Tree(text);
            Assert.Empty(tree.Findings);
            var edit = Some(tree, random);
            var outcome = Editor.Apply(tree, edit);
            var what = $"seed {Text(seed)}: {edit}\n--- before ---\n{text}\n";
            Assert.True(outcome is EditOutcome.Edited, "refused: " + what);
            var after = ((EditOutcome.Edited)outcome).Text;
            what += "--- after ---\n" + after.Content;
            var meant = DumbModel.Of(tree.Root);
            DumbModel.Make(meant, edit);
            Assert.True(DumbModel.Show(meant) == DumbModel.Show(DumbModel.Of(Tree.Read(after).Root)), "not as meant: " + what);
            var (first, last) = Touched(tree, edit);
            Assert.True(after.Content.StartsWith(text[..first], StringComparison.Ordinal), "a line before changed: " + what);
            Assert.True(after.Content.EndsWith(text[last..], StringComparison.Ordinal), "a line after changed: " + what);
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static Edit Some(Tree tree, Random random)
    {
        while (true)
        {
            var (path, node) = Walk(NodePath.Root, tree.Root, random);
            switch (random.Next(4))
            {
                case 0 when path != NodePath.Root && path != NodePath.Root.Key("loomwright"):
                    return new Edit.Replace(path, Value(random, 2));
                case 1 when path != NodePath.Root && path != NodePath.Root.Key("loomwright"):
                    return new Edit.Remove(path);
                case 2 when node is Node.Map or Node.Scalar { IsEmpty: true }:
                    return new Edit.AddKey(path, "new " + Words[random.Next(Words.Length)], Value(random, 2), node is Node.Map && path != NodePath.Root && random.Next(2) == 0);
                case 3 when node is Node.List or Node.Scalar { IsEmpty: true }:
                    return new Edit.AddItem(path, Value(random, 2));
            }
        }
    }

    private static (NodePath Path, Node Node) Walk(NodePath path, Node node, Random random)
    {
        if (random.Next(3) == 0)
        {
            return (path, node);
        }

        switch (node)
        {
            case Node.Map { Entries.IsEmpty: false } map:
                var entry = map.Entries[random.Next(map.Entries.Length)];
                return Walk(path.Key(entry.Key.Text), entry.Value, random);
            case Node.List { Items.IsEmpty: false } list:
                var item = random.Next(list.Items.Length);
                return Walk(path.Item(item), list.Items[item], random);
            default:
                return (path, node);
        }
    }

    private static Node Value(Random random, int depth) => (depth == 0 ? 0 : random.Next(3)) switch
    {
        0 => Node.Word(Words[random.Next(Words.Length)]),
        1 => new Node.List([.. Enumerable.Range(0, random.Next(3)).Select(_ => Value(random, depth - 1))], default, Flow: false),
        _ => new Node.Map([.. Enumerable.Range(0, random.Next(3)).Select(i => new Entry(Node.Word("k" + Text(i)), Value(random, depth - 1)))], default, Flow: false),
    };

    // Offsets between which the edit may write: the lines of the outermost braces around it, or of the entry, or the end of what it adds to.
    private static (int First, int Last) Touched(Tree tree, Edit edit)
    {
        var chain = new List<(NodePath Path, Node Node)> { (NodePath.Root, tree.Root) };
        foreach (var step in edit.At.ToString().Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            var (path, node) = chain[^1];
            chain.Add(node is Node.Map map ? (path.Key(step), map.Find(step)!.Value) : (path.Item(Number(step)), ((Node.List)node).Items[Number(step)]));
        }

        var target = chain.Count - 1;
        if (edit is Edit.Remove && chain[target - 1].Node is Node.Map { Entries.Length: 1 } or Node.List { Items.Length: 1 })
        {
            target--;
        }

        var adds = edit is Edit.AddKey or Edit.AddItem;
        var flow = chain.FindIndex(0, adds ? chain.Count : chain.Count - 1, c => c.Node is Node.Map { Flow: true } or Node.List { Flow: true });
        target = flow >= 0 && flow <= target ? flow : target;
        var (at, of) = chain[target];
        var start = target == 0 ? of.Span.Start : chain[target - 1].Node is Node.Map parent ? parent.Entries.First(e => ReferenceEquals(e.Value, of)).Key.Span.Start : of.Span.Start;
        if (adds && flow < 0 && of is not Node.Scalar)
        {
            start = edit is Edit.AddKey { First: true } ? start : of.Span.End;
        }

        // The first key beside a dash: the next one may move up to the dash.
        var end = Math.Max(of.Span.End, start);
        if (edit is Edit.Remove && flow < 0 && target > 1 && target == chain.Count - 1 && chain[target - 1].Node is Node.Map siblings && chain[target - 2].Node is Node.List && ReferenceEquals(siblings.Entries[0].Value, of))
        {
            end = siblings.Entries[1].Key.Span.End;
        }

        var text = tree.Text.Content;
        var lineStart = start == 0 ? 0 : text.LastIndexOf('\n', start - 1) + 1;
        var lineEnd = text.IndexOf('\n', end);
        return (lineStart, lineEnd < 0 ? text.Length : lineEnd + 1);
    }
}

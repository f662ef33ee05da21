using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Where in the file each thing of a loom is told.</summary>
internal sealed class Places(Node.Map root)
{
    private readonly Dictionary<string, (int Item, Span At)> _wires = new(Names.Comparer);
    private readonly Dictionary<int, Wire> _byItem = [];

    /// <summary>Wires by their place in the file's list; those that could not be read are not there.</summary>
    public IReadOnlyDictionary<int, Wire> Wires => _byItem;

    /// <summary>Remembers where a wire is told.</summary>
    /// <param name="item">Its place in the list of wires, from 0.</param>
    public void Remember(Wire wire, int item, Span at)
    {
        _wires[wire.Name] = (item, at);
        _byItem[item] = wire;
    }

    /// <summary>The path of a wire, or null.</summary>
    public NodePath? PathOf(string wire) => _wires.TryGetValue(wire, out var told) ? NodePath.Root.Key("wires").Item(told.Item) : null;

    /// <summary>The place of a subject, or null.</summary>
    public Span? Of(Subject subject) => subject switch
    {
        Subject.Whole => new Span(root.Span.Start, 0),
        Subject.Stretch stretch => stretch.Span,
        Subject.OfPart part => Entry("parts", part.Part)?.Key.Span,
        Subject.OfTerminal at => Terminal(at.Terminal),
        Subject.OfWire wire => _wires.TryGetValue(wire.Wire, out var told) ? told.At : null,
        Subject.OfCondition condition => Entry("conditions", condition.Key)?.Value.Span,
        Subject.OfFunction function => Entry("functions", function.Function)?.Key.Span,
        _ => null,
    };

    private Entry? Entry(string section, string name) => (root.Find(section)?.Value as Node.Map)?.Find(name);

    private Span? Terminal(TerminalRef terminal) => Entry("parts", terminal.Part) is { } part
        ? First(part.Value, terminal.Terminal) ?? part.Key.Span
        : null;

    private static Span? First(Node node, string word) => node switch
    {
        Node.Scalar scalar => Names.Same(scalar.Text, word) ? scalar.Span : null,
        Node.List list => list.Items.Select(i => First(i, word)).FirstOrDefault(s => s is not null),
        Node.Map map => map.Entries.Select(e => First(e.Key, word) ?? First(e.Value, word)).FirstOrDefault(s => s is not null),
        _ => null,
    };
}

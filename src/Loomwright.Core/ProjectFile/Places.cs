using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Where in the file each thing of a loom is told.</summary>
internal sealed class Places(Node.Map root)
{
    private readonly Dictionary<string, Span> _wires = new(Names.Comparer);

    /// <summary>Remembers where a wire is told, under its given or derived name.</summary>
    public void Wire(string name, Span at) => _wires[name] = at;

    /// <summary>The place of a subject, or null.</summary>
    public Span? Of(Subject subject) => subject switch
    {
        Subject.Whole => new Span(root.Span.Start, 0),
        Subject.Stretch stretch => stretch.Span,
        Subject.OfPart part => Entry("parts", part.Part)?.Key.Span,
        Subject.OfTerminal at => Terminal(at.Terminal),
        Subject.OfWire wire => _wires.TryGetValue(wire.Wire, out var span) ? span : null,
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

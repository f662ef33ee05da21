using Loomwright.Network;
using Loomwright.Parts;

namespace Loomwright.Tests.Network;

/// <summary>A circuit restated from a published example, with its quantities read in the words of the answers table.</summary>
public sealed class PublishedCircuit
{
    private readonly List<string> _nodes = ["0"];
    private readonly List<string> _elements = [];
    private readonly Circuit _circuit;

    public PublishedCircuit(IEnumerable<PublishedRow> rows)
    {
        var branches = new List<Branch>();
        foreach (var row in rows)
        {
            _elements.Add(row["element"]);
            branches.Add(new(Node(row["node_plus"]), Node(row["node_minus"]), CurveOf(row)));
        }

        _circuit = new(_nodes.Count, [.. branches]);
        Solver = new(_circuit);
        Outcome = Solver.Solve();
    }

    public Solver Solver { get; }

    public Outcome Outcome { get; }

    public bool Bends => _circuit.Branches.Any(branch => branch.Curve is Filament);

    /// <summary>Published circuits, by id, in the order of the table.</summary>
    public static IEnumerable<IGrouping<string, PublishedRow>> Rows(string path) =>
        PublishedTable.ReadFile(path).Rows.GroupBy(row => row["id"], StringComparer.Ordinal);

    /// <summary>The value of <c>v(a)</c>, <c>v(a,b)</c>, <c>i(X)</c>, <c>is(X)</c>, <c>p(X)</c>, <c>ps(X)</c> or <c>rin(X)</c>.</summary>
    public double Value(string quantity)
    {
        var parts = quantity.Split('(', ',', ')');
        var name = parts[1];
        return parts[0] switch
        {
            "v" => Potential(name) - (parts[2].Length > 0 ? Potential(parts[2]) : 0),
            "i" => Amps(name),
            "is" => -Amps(name),
            "p" => Amps(name) * Volts(name),
            "ps" => -Amps(name) * Volts(name),
            "rin" => Volts(name) / -Amps(name),
            _ => throw new InvalidDataException(quantity),
        };
    }

    private static Curve CurveOf(PublishedRow row) => row["type"] switch
    {
        "R" => new Ohms(row.Number("value")),
        "V" => new FixedVoltage(row.Number("value")),
        "I" => new FixedCurrent(row.Number("value")),
        "LAMP" => new Filament(row.Number("value"), row.Number("rated_V")),
        var other => throw new InvalidDataException(other),
    };

    private double Potential(string node) => Solver.Potentials[_nodes.IndexOf(node) is >= 0 and var n ? n : throw new InvalidDataException(node)];

    private int Branch(string element) => _elements.IndexOf(element) is >= 0 and var b ? b : throw new InvalidDataException(element);

    private double Amps(string element) => Solver.Amps[Branch(element)];

    private double Volts(string element)
    {
        var branch = _circuit.Branches[Branch(element)];
        return Solver.Volts(branch.From, branch.To);
    }

    private int Node(string name)
    {
        if (!_nodes.Contains(name))
        {
            _nodes.Add(name);
        }

        return _nodes.IndexOf(name);
    }
}

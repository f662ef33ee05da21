using System.Globalization;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>
/// Makes a plate of every part and a line of every wire that is not drawn as a return. What came after the sheet was arranged
/// changes nothing of what was there: wires that came later are all lines, and take no row from others.
/// </summary>
internal sealed class Plates
{
    /// <summary>The kind of what is no part: the name of a terminal on another sheet.</summary>
    public const string FlagKind = "flag";

    private const double Inset = 8;
    private const double SignWidth = 24;

    private readonly Dictionary<TerminalRef, List<(string Where, string? Wire)>> _returns = [];
    private readonly Dictionary<End, Line> _lineOf = [];

    /// <param name="whole">Of what the loom is a part: what returns to a ground elsewhere is a return here too.</param>
    public Plates(Loom loom, Loom? whole = null)
    {
        var models = loom.Parts.ToDictionary(p => p.Name, p => Kinds.Find(p.Kind)?.Build(p) ?? new Model { Terminals = [] }, Names.Comparer);
        var isPlaced = loom.Placing.Boxes.Take(loom.Placing.Arranged?.Boxes ?? 0).Select(b => b.Part).ToHashSet(Names.Comparer);
        var arranged = loom.Placing.Arranged is { } a
            ? loom.Wires.Take(a.Wires).Where(w => isPlaced.Contains(w.From.Part) && isPlaced.Contains(w.To.Part)).ToHashSet()
            : [.. loom.Wires];
        var returns = whole is null
            ? Returns.Of(loom with { Wires = [.. loom.Wires.Where(arranged.Contains)] }, models)
            : Returns.Of(whole, whole.Parts.ToDictionary(p => p.Name, p => Kinds.Find(p.Kind)?.Build(p) ?? new Model { Terminals = [] }, Names.Comparer));
        var isReturn = returns.Keys.Select(w => w.Name).ToHashSet(StringComparer.Ordinal);
        var live = loom.Wires
            .Where(w => !isReturn.Contains(w.Name))
            .SelectMany(w => new[] { w.From, w.To }.Where(e => arranged.Contains(w) || !isPlaced.Contains(e.Part)))
            .ToHashSet();
        foreach (var (wire, end) in returns)
        {
            Note(end, $"{(end == wire.From ? wire.To : wire.From).Part} {Labels.Of(wire)}", wire.Name);
        }

        foreach (var part in loom.Parts)
        {
            foreach (var joint in models[part.Name].Joints)
            {
                Note(new TerminalRef(part.Name, joint.Terminal), $"on {joint.Part}", null);
            }
        }

        All = [.. loom.Parts.Select((p, i) => new Plate(i, p, models[p.Name], FormOf(p, models[p.Name], live), loom.Placing.Arranged is not null && !isPlaced.Contains(p.Name)))];
        var byName = All.ToDictionary(p => p.Part.Name, Names.Comparer);
        var (lines, later) = (new List<Line>(), new List<Line>());
        foreach (var wire in loom.Wires.Where(w => !isReturn.Contains(w.Name)).OrderBy(w => arranged.Contains(w) ? 0 : 1))
        {
            if (byName.TryGetValue(wire.From.Part, out var from) && byName.TryGetValue(wire.To.Part, out var to))
            {
                var line = new Line(lines.Count + later.Count, wire, new End(from, wire.From.Terminal), new End(to, wire.To.Terminal));
                var isLater = !arranged.Contains(wire);
                (isLater ? later : lines).Add(line);
                foreach (var end in new[] { line.A, line.B })
                {
                    (isLater && !end.Plate.IsLate ? end.Plate.LaterEnds : end.Plate.Ends).Add(end);
                }
            }
            else
            {
                Unrouted.Add(wire.Name);
            }
        }

        (Lines, Later) = ([.. lines], [.. later]);
        foreach (var line in lines.Concat(later))
        {
            _lineOf[line.A] = line;
            _lineOf[line.B] = line;
        }
    }

    public Plate[] All { get; }

    public Line[] Lines { get; }

    /// <summary>Those that were there when the sheet was arranged.</summary>
    public IEnumerable<Plate> Standing => All.Where(p => !p.IsLate);

    /// <summary>Lines of the wires that came after the sheet was arranged, numbered on from <see cref="Lines"/>.</summary>
    public Line[] Later { get; }

    /// <summary>Wires with an end on a part there is not.</summary>
    public List<string> Unrouted { get; } = [];

    /// <summary>The line an end belongs to.</summary>
    public Line Of(End end) => _lineOf[end];

    /// <summary>Rows, marks and widths, once the sides of all ends are known. May be called again after the sides change.</summary>
    public void Lay()
    {
        foreach (var plate in All)
        {
            plate.Rows.Clear();
            plate.Shared.Clear();
            plate.Bars.Clear();
            plate.Pins.Clear();
            Rows(plate);
            var widest = plate.Rows.Select(r => Width(plate, r)).DefaultIfEmpty(0).Max();

            // One more ring must not shift what stands beside it.
            widest = plate.Form == Form.Joint ? Math.Max(widest, Width(plate, JointHead(plate, "00 rings"))) : widest;
            var body = plate.Rows.Where(r => !r.Head).Select(r => Width(plate, r)).DefaultIfEmpty(0).Max();
            plate.Width = Even(plate.Form switch
            {
                Form.Plug => Math.Max(30, body + 6),
                Form.Joint => 0,
                _ => widest + (2 * Inset),
            });
            plate.Footprint = Math.Max(plate.Width, widest + 4);
        }
    }

    /// <summary>What a name and a rating say: <c>main fuse 20 A</c>.</summary>
    public static string Title(Part part, Model model) =>
        model.Protectors is [{ ClosesByItself: false } fuse]
            ? string.Create(CultureInfo.InvariantCulture, $"{part.Name} {fuse.RatingAmps:0.##} A")
            : part.Name;

    /// <summary>The next width whose half is even, so that the corner of a box is even too.</summary>
    public static double Even(double width) => Math.Ceiling(width / 4) * 4;

    private Form FormOf(Part part, Model model, HashSet<TerminalRef> live)
    {
        var wired = model.Terminals.Count(t => live.Contains(new TerminalRef(part.Name, t.Mark)));
        return part.Kind == FlagKind ? Form.Flag
            : Returns.IsPoint(model) ? Form.Joint
            : Returns.IsPlug(model) ? Form.Plug
            : model.Terminals.Length == 2 && !model.Terminals.Any(t => _returns.ContainsKey(new TerminalRef(part.Name, t.Mark))) && (model.Protectors.Length == 1 || part.Kind is "diode" or "resistor") ? Form.Through
            : model.Terminals.Length == 2 && wired <= 1 && model.Supply is null ? Form.Short
            : Form.Table;
    }

    private void Note(TerminalRef end, string where, string? wire)
    {
        if (!_returns.TryGetValue(end, out var list))
        {
            _returns[end] = list = [];
        }

        list.Add((where, wire));
    }

    private void Rows(Plate plate)
    {
        var marks = plate.Model.Terminals.Select(t => t.Mark).ToList();
        switch (plate.Form)
        {
            case Form.Joint:
                plate.Rows.Add(JointHead(plate, Count(plate)));
                Terminal(plate, plate.Ends, new PlateRow("", ""), []);
                plate.Pins.Add(("", 1, plate.Rows.Count - 1, null));
                break;
            case Form.Plug:
                plate.Rows.Add(new PlateRow("", plate.Part.Name) { Head = true });
                foreach (var cavity in marks.Select(m => m[..^1]).Distinct(Names.Comparer))
                {
                    var first = plate.Rows.Count;
                    Terminal(plate, [.. plate.Ends.Where(e => Names.Same(e.Mark[..^1], cavity))], new PlateRow(cavity, ""), []);
                    plate.Pins.AddRange(marks.Where(m => Names.Same(m[..^1], cavity)).Select(m => (m, first, plate.Rows.Count - 1, (bool?)(m.EndsWith('a') == plate.FirstRight))));
                }

                break;
            case Form.Flag:
                Terminal(plate, plate.Ends, new PlateRow("", plate.Part.Name), []);
                break;
            case Form.Through when !plate.OneSided:
                plate.Rows.Add(new PlateRow("", Title(plate.Part, plate.Model)) { Head = true });
                Terminal(plate, plate.Ends, new PlateRow("", "") { Symbol = Symbols.Of(plate.Part, plate.Model) }, marks.SelectMany(m => ReturnsAt(plate, m)));
                plate.Pins.AddRange(marks.Select((m, i) => (m, 1, plate.Rows.Count - 1, (bool?)(i == 0 == plate.FirstRight))));
                break;
            case Form.Short:
                Short(plate, marks);
                break;
            case Form.Through or Form.Table:
                Table(plate);
                break;
        }
    }

    // The wired terminal has the upper row, the one that returns the lower; one with neither shares the upper.
    private void Short(Plate plate, List<string> marks)
    {
        Terminal(plate, plate.Ends, new PlateRow("", plate.Part.Name) { Symbol = Symbols.Of(plate.Part, plate.Model) }, []);
        var upper = plate.Rows.Count - 1;
        foreach (var mark in marks)
        {
            var first = plate.Rows.Count;
            plate.Rows.AddRange(ReturnsAt(plate, mark).Select(r => new PlateRow("", r.Where) { Symbol = "ground", Return = r.Wire }));
            plate.Pins.Add(first < plate.Rows.Count ? (mark, first, plate.Rows.Count - 1, null) : (mark, 0, upper, null));
        }
    }

    private void Table(Plate plate)
    {
        plate.Rows.Add(new PlateRow(Title(plate.Part, plate.Model), "") { Head = true, Symbol = Symbols.Of(plate.Part, plate.Model) });
        var unused = plate.Part.Settings.Words("unused");
        string? plug = null;
        foreach (var terminal in plate.Model.Terminals)
        {
            if (terminal.Plug is { } next && next != plug)
            {
                plate.Rows.Add(new PlateRow("", $"plug {next}") { Head = true, Quiet = true });
                plug = next;
            }

            var first = plate.Rows.Count;
            var capped = unused.Contains(terminal.Mark, Names.Comparer);
            Terminal(
                plate,
                [.. plate.Ends.Where(e => Names.Same(e.Mark, terminal.Mark))],
                new PlateRow(terminal.Mark, capped ? "(capped)" : terminal.Name ?? "") { Role = plate.Model.Controller is null ? Role.Lead : terminal.Role, Quiet = capped },
                ReturnsAt(plate, terminal.Mark));
            plate.Pins.Add((terminal.Mark, first, plate.Rows.Count - 1, null));
        }
    }

    private PlateRow JointHead(Plate plate, string count) =>
        new("", $"{plate.Part.Name}{(plate.Part.Kind == "splice" ? "" : $", {count}")}{string.Concat(ReturnsAt(plate, "").Select(r => $", {r.Where}"))}") { Head = true, Symbol = Symbols.Of(plate.Part, plate.Model) };

    // The first return stands beside the mark; others and further wires take rows of their own.
    private static void Terminal(Plate plate, List<End> ends, PlateRow row, IEnumerable<(string Where, string? Wire)> returns)
    {
        var first = plate.Rows.Count;
        foreach (var side in ends.GroupBy(e => e.Right).OrderBy(g => g.Key))
        {
            var sharing = side.ToList();
            sharing.ForEach(e => e.Row = first + sharing.IndexOf(e));
            if (sharing.Count > 1)
            {
                plate.Shared.Add((sharing, first));
            }
        }

        plate.Rows.Add(row);
        var last = ends.Select(e => e.Row).DefaultIfEmpty(first).Max();
        while (plate.Rows.Count <= last)
        {
            plate.Rows.Add(new PlateRow("", ""));
        }

        if (last > first)
        {
            plate.Bars.Add((first, last));
        }

        var at = first;
        foreach (var (where, wire) in returns)
        {
            if (at == plate.Rows.Count)
            {
                plate.Rows.Add(new PlateRow("", ""));
            }

            plate.Rows[at] = plate.Rows[at] with { Words = where, Symbol = plate.Rows[at].Symbol ?? "ground", Return = wire };
            at++;
        }
    }

    private List<(string Where, string? Wire)> ReturnsAt(Plate plate, string mark) => _returns.GetValueOrDefault(new TerminalRef(plate.Part.Name, mark), []);

    private string Count(Plate plate)
    {
        var rings = plate.Ends.Count + plate.LaterEnds.Count + _returns.SelectMany(r => r.Value).Count(w => w.Where.StartsWith(plate.Part.Name + " ", StringComparison.Ordinal));
        return string.Create(CultureInfo.InvariantCulture, $"{rings} {(rings == 1 ? "ring" : "rings")}");
    }

    private static double Width(Plate plate, PlateRow row) =>
        (row.Symbol is null ? 0 : SignWidth)
        + (row.Mark.Length == 0 ? 0 : Widths.Of(row.Mark, 16, bold: true) + (plate.Form == Form.Plug ? 0 : 6))
        + (row.Role is Role.Input or Role.Output ? 24 : 0)
        + Widths.Of(row.Words, 16, bold: false);
}

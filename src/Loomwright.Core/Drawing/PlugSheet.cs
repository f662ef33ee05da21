using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>One plug as a list to check at the bike: a row for each cavity, in the order on the case, with a box to tick.</summary>
internal static class PlugSheet
{
    private const double LeastRow = 30;
    private const double MostRow = 56;
    private const double Head = 40;
    private const double CaseWidth = 330;
    private const double WireLength = 330;

    /// <summary>The plugs there are: those in the loom, and those of boxes.</summary>
    public static IEnumerable<(Part Part, string Plug, string Name)> All(Loom loom)
    {
        foreach (var part in loom.Parts)
        {
            var model = Model(part);
            if (Returns.IsPlug(model))
            {
                yield return (part, "", part.Name);
            }
            else
            {
                foreach (var plug in model.Terminals.Select(t => t.Plug).OfType<string>().Distinct(Names.Comparer))
                {
                    yield return (part, plug, $"{part.Name} {plug}");
                }
            }
        }
    }

    public static Scene Of(Loom loom, Part part, string plug, string name)
    {
        var onward = new Onward(loom);
        var rows = Rows(loom, part, plug).ToList();
        var twoSided = plug.Length == 0;
        var paper = Paper.For(0, Head + (rows.Count * LeastRow));
        var row = Math.Min(MostRow, (paper.BodyHeight - Head) / Math.Max(1, rows.Count));
        var left = twoSided ? (paper.Width - CaseWidth) / 2 : Paper.Left + 40;
        var right = left + CaseWidth;
        var (strands, texts, pins, signs) = (new List<Strand>(), new List<Lettering>(), new List<Pin>(), new List<Sign>());
        for (var i = 0; i < rows.Count; i++)
        {
            var y = Math.Round(Paper.Top + Head + ((i + 0.5) * row));
            var (mark, words, a, b) = rows[i];
            texts.Add(new Lettering(mark, new Spot(left + 44, y + 6), Hold.Start) { Size = 19, Bold = true, Part = part.Name });
            texts.Add(new Lettering(words, new Spot(left + 100, y + 6), Hold.Start) { Part = part.Name });
            signs.Add(new Sign("tick", new Spot(left + 20, y)) { Part = part.Name });
            if (twoSided)
            {
                Side(a, mark + "a", new Area(left, y - (row / 2), CaseWidth / 2, row), toRight: false);
            }

            Side(b, twoSided ? mark + "b" : mark, new Area(twoSided ? left + (CaseWidth / 2) : left, y - (row / 2), twoSided ? CaseWidth / 2 : CaseWidth, row), toRight: true);
        }

        if (twoSided)
        {
            texts.Add(new Lettering("side a", new Spot(left - 8, Paper.Top + Head - 12), Hold.End) { Size = 19, Bold = true });
            texts.Add(new Lettering("side b", new Spot(right + 8, Paper.Top + Head - 12), Hold.Start) { Size = 19, Bold = true });
        }

        return new Scene
        {
            Id = "plug",
            Title = $"{loom.Name}: {(twoSided ? name : $"plug {plug} of {part.Name}")}",
            About = "in the order on the case, looked at from the wire side: where the wires go in; tick what you have looked at",
            Width = paper.Width,
            Height = paper.Height,
            Paper = paper.Name,
            Cells = [new Cell(part.Name, new Area(left, Paper.Top + Head, CaseWidth, rows.Count * row)) { Kind = part.Kind }],
            Pins = [.. pins],
            Strands = [.. strands],
            Signs = [.. signs],
            Letterings = [.. texts],
        };

        void Side(ImmutableArray<Wire> wires, string terminal, Area area, bool toRight)
        {
            var middle = area.Y + (area.Height / 2);
            var edge = toRight ? right : left;
            var apart = Math.Min(24, area.Height / Math.Max(1, wires.Length));
            var heights = wires.Select((_, i) => Math.Round(middle + ((i - ((wires.Length - 1) / 2.0)) * apart))).ToList();
            pins.Add(new Pin(part.Name, terminal, area, [.. heights.Select(y => new Spot(edge, y))]));
            for (var i = 0; i < wires.Length; i++)
            {
                var (wire, y) = (wires[i], heights[i]);
                var here = new TerminalRef(part.Name, terminal);
                var far = edge + (toRight ? WireLength : -WireLength);
                ImmutableArray<Spot> path = wire.From == here ? [new(edge, y), new(far, y)] : [new(far, y), new(edge, y)];
                strands.Add(new Strand(wire.Name, wire.Colour, wire.Size.SquareMillimetres, path));
                var over = y - (Insulation.Body(wire.Size.SquareMillimetres) / 2) - 1.6;
                texts.Add(new Lettering(Labels.Of(wire), new Spot(edge + (toRight ? 6 : -6), over), toRight ? Hold.Start : Hold.End) { Wire = wire.Name });
                texts.Add(new Lettering(string.Create(CultureInfo.InvariantCulture, $"{wire.Length.Metres:0.00} m"), new Spot(far + (toRight ? -6 : 6), over), toRight ? Hold.End : Hold.Start) { Wire = wire.Name });
                var next = wire.From == here ? wire.To : wire.From;
                texts.Add(new Lettering(Words(onward, next, wire, toRight ? paper.Width - Paper.Left - far - 10 : far - 10 - Paper.Left), new Spot(far + (toRight ? 10 : -10), y + 5.5), toRight ? Hold.Start : Hold.End));
            }
        }
    }

    // The next terminal, and where the wires behind it end when it is only a joint or a plug: as many as there is room for.
    private static string Words(Onward onward, TerminalRef next, Wire wire, double room)
    {
        var ends = onward.Ends(next, wire);
        if (ends.Length == 0 || (ends.Length == 1 && ends[0] == next))
        {
            return next.ToString();
        }

        for (var shown = ends.Length; shown > 0; shown--)
        {
            var more = ends.Length > shown ? string.Create(CultureInfo.InvariantCulture, $" and {ends.Length - shown} more") : "";
            var words = $"{next} → {string.Join(", ", ends.Take(shown))}{more}";
            if (Widths.Of(words, 16, bold: false) <= room)
            {
                return words;
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"{next} → {ends.Length} ends");
    }

    private static IEnumerable<(string Mark, string Words, ImmutableArray<Wire> A, ImmutableArray<Wire> B)> Rows(Loom loom, Part part, string plug)
    {
        var model = Model(part);
        if (plug.Length > 0)
        {
            var unused = part.Settings.Words("unused");
            return model.Terminals.Where(t => Names.Same(t.Plug ?? "", plug))
                .Select(t => (t.Mark, unused.Contains(t.Mark, Names.Comparer) ? "(capped)" : t.Name ?? "", ImmutableArray<Wire>.Empty, At(t.Mark)));
        }

        return model.Terminals.Select(t => t.Mark[..^1]).Distinct(Names.Comparer).Select(c => (c, "", At(c + "a"), At(c + "b")));

        ImmutableArray<Wire> At(string mark)
        {
            var terminal = new TerminalRef(part.Name, mark);
            return [.. loom.Wires.Where(w => w.From == terminal || w.To == terminal)];
        }
    }

    private static Model Model(Part part) => Kinds.Find(part.Kind)?.Build(part) ?? new Model { Terminals = [] };
}

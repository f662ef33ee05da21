using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Draws plates and gathers what they consist of.</summary>
internal sealed class PlateDrawing(Pieces pieces)
{
    private const double Inset = 8;
    private const double Half = Layout.Row / 2;

    // From the middle of a row down to the base line of its text.
    private const double Base = 5.5;

    /// <summary>Draws one plate around its middle line.</summary>
    /// <param name="middle">Of the plate, across.</param>
    /// <param name="y">The middle height of a row.</param>
    public void Plate(Plate plate, double middle, Func<int, double> y)
    {
        var left = middle - (plate.Width / 2);
        var headless = plate.Form is Form.Plug or Form.Joint;
        if (plate.Rows.Count > 0 && plate.Form != Form.Flag)
        {
            var frame = headless ? 0 : Standing.Frame;
            var top = y(headless ? 1 : 0) - Half - frame;
            var half = plate.Form == Form.Joint ? Standing.PointHalf : plate.Width / 2;
            var area = new Area(middle - half, top, half * 2, y(plate.Rows.Count - 1) + Half + frame - top);
            pieces.Cells.Add(new Cell(plate.Part.Name, area) { Kind = plate.Part.Kind, Outlined = plate.Form != Form.Joint });
            Pinned(plate, area, middle, y);
        }

        for (var i = 0; i < plate.Rows.Count; i++)
        {
            Row(plate, plate.Rows[i], middle, left, y(i), headless && i == 0);
        }

        foreach (var light in plate.Model.Controller?.Lights ?? [])
        {
            foreach (var (_, row, _, _) in plate.Pins.Where(p => Names.Same(p.Mark, light.Terminal)))
            {
                pieces.CaseLights.Add(new CaseLight(plate.Part.Name, light.Terminal, light.Means, new Spot(Free(plate, row) ? middle + (plate.Width / 2) : left, y(row))));
            }
        }

        foreach (var sight in plate.Model.Sights)
        {
            pieces.Lights.Add(new Light(plate.Part.Name, sight.Name, Seen(plate, sight)));
        }

        foreach (var (first, last) in plate.Bars)
        {
            foreach (var x in plate.Form switch
            {
                Form.Joint or Form.Plug => [middle],
                _ => plate.Ends.Concat(plate.LaterEnds).Where(e => e.Row >= first && e.Row <= last).GroupBy(e => e.Right).Where(g => g.Count() > 1).Select(g => g.Key ? left + plate.Width : left),
            })
            {
                pieces.Strokes.Add(new Stroke(new Spot(x, y(first)), new Spot(x, y(last))));
            }
        }

        if (plate.Form == Form.Joint)
        {
            pieces.Dots.AddRange(plate.Ends.Concat(plate.LaterEnds).Where(e => e.Row > 0).Select(e => e.Row).Distinct().Order().Select(r => new Spot(middle, y(r))));
        }
    }

    // A light stands on the edge no wire of its row leaves by; the right one where both are free.
    private static bool Free(Plate plate, int row) => !plate.Ends.Concat(plate.LaterEnds).Any(e => e.Row == row && e.Right);

    private void Pinned(Plate plate, Area area, double middle, Func<int, double> y)
    {
        foreach (var (mark, first, last, right) in plate.Pins)
        {
            var top = y(first) - Half;
            var (from, to) = (right == true ? middle : area.X, right == false ? middle : area.Right);
            var ends = plate.Ends.Concat(plate.LaterEnds).Where(e => e.Row >= 0 && Names.Same(e.Mark, mark)).Select(e => new Spot(middle + ((e.Right ? 1 : -1) * plate.Width / 2), y(e.Row)));
            pieces.Pins.Add(new Pin(plate.Part.Name, mark, new Area(from, top, to - from, y(last) + Half - top), [.. ends]));
        }
    }

    // At the symbol of a part that shows one thing; else over the row of the terminal that feeds what is seen and no other.
    private Area Seen(Plate plate, Sight sight)
    {
        var sign = pieces.Signs.FirstOrDefault(s => s.Part == plate.Part.Name && s.Return is null && s.Symbol != "arrow");
        if (plate.Model.Sights.Length == 1 && sign is not null)
        {
            return new Area(sign.Middle.X - 10, sign.Middle.Y - 10, 20, 20);
        }

        var ends = plate.Model.Sights.SelectMany(s => plate.Model.Elements.Where(e => e.Name == s.Element)).SelectMany(e => new[] { e.From, e.To }).ToList();
        var own = plate.Model.Elements.First(e => e.Name == sight.Element);
        var mark = ends.Count(m => m == own.From) <= ends.Count(m => m == own.To) ? own.From : own.To;
        return pieces.Pins.FirstOrDefault(p => p.Part == plate.Part.Name && Names.Same(p.Terminal, mark))?.Area
            ?? pieces.Cells.First(c => c.Part == plate.Part.Name).Area;
    }

    private void Row(Plate plate, PlateRow row, double middle, double left, double y, bool isAbove)
    {
        var width = (row.Symbol is null ? 0 : 24) + Widths.Of(row.Mark, 16, bold: true) + Widths.Of(row.Words, 16, bold: false);
        var centred = isAbove || row.Head || plate.Form == Form.Plug;
        var x = centred ? middle - (width / 2) : left + Inset;
        if (plate is { Form: Form.Through, OneSided: false } && !row.Head)
        {
            if (row.Symbol is not null)
            {
                pieces.Signs.Add(new Sign(row.Symbol, new Spot(middle, y)) { Part = plate.Part.Name });
                pieces.Strokes.Add(new Stroke(new Spot(left, y), new Spot(middle - 10, y)));
                pieces.Strokes.Add(new Stroke(new Spot(middle + 10, y), new Spot(left + plate.Width, y)));
            }

            return;
        }

        var symbolFirst = row.Mark.Length == 0 || row.Head;
        if (row.Role == Role.Input)
        {
            pieces.Signs.Add(new Sign("arrow", new Spot(left + 6, y)) { Part = plate.Part.Name });
        }

        if (row.Role == Role.Output)
        {
            pieces.Signs.Add(new Sign("arrow", new Spot(left + plate.Width - 6, y)) { Part = plate.Part.Name });
        }

        x += row.Role is Role.Input or Role.Output ? 6 : 0;
        if (row.Symbol is not null && symbolFirst)
        {
            pieces.Signs.Add(new Sign(row.Symbol, new Spot(x + 10, y)) { Part = plate.Part.Name, Return = row.Return });
            x += 24;
        }

        var baseline = y + (isAbove ? -1 : Base);
        if (row.Mark.Length > 0)
        {
            pieces.Letterings.Add(new Lettering(row.Mark, new Spot(x, baseline), Hold.Start) { Bold = true, Part = plate.Part.Name });
            x += Widths.Of(row.Mark, 16, bold: true) + 6;
        }

        if (row.Symbol is not null && !symbolFirst)
        {
            pieces.Signs.Add(new Sign(row.Symbol, new Spot(x + 10, y)) { Part = plate.Part.Name, Return = row.Return });
            x += 24;
        }

        if (row.Words.Length > 0)
        {
            pieces.Letterings.Add(new Lettering(row.Words, new Spot(x, baseline), Hold.Start) { Quiet = row.Quiet || isAbove, Part = plate.Part.Name, Return = row.Return });
        }
    }
}

using Loomwright.Parts;

namespace Loomwright.Drawing;

/// <summary>Draws plates and gathers what they consist of.</summary>
internal sealed class PlateDrawing
{
    private const double Inset = 8;
    private const double Half = Layout.Row / 2;

    // From the middle of a row down to the base line of its text.
    private const double Base = 5.5;

    public List<Cell> Cells { get; } = [];

    public List<Sign> Signs { get; } = [];

    public List<Stroke> Strokes { get; } = [];

    public List<Spot> Dots { get; } = [];

    public List<Lettering> Letterings { get; } = [];

    /// <summary>Draws one plate around its middle line.</summary>
    /// <param name="middle">Of the plate, across.</param>
    /// <param name="y">The middle height of a row.</param>
    public void Plate(Plate plate, double middle, Func<int, double> y)
    {
        var left = middle - (plate.Width / 2);
        var headless = plate.Form is Form.Plug or Form.Joint;
        if (plate.Form != Form.Joint && plate.Rows.Count > 0)
        {
            var top = y(headless ? 1 : 0) - Half - (headless ? 0 : 3);
            Cells.Add(new Cell(plate.Part.Name, new Area(left, top, plate.Width, y(plate.Rows.Count - 1) + Half + (headless ? 0 : 3) - top)));
        }

        for (var i = 0; i < plate.Rows.Count; i++)
        {
            Row(plate, plate.Rows[i], middle, left, y(i), headless && i == 0);
        }

        foreach (var (first, last) in plate.Bars)
        {
            foreach (var x in plate.Form switch
            {
                Form.Joint or Form.Plug => [middle],
                _ => plate.Ends.Where(e => e.Row >= first && e.Row <= last).GroupBy(e => e.Right).Where(g => g.Count() > 1).Select(g => g.Key ? left + plate.Width : left),
            })
            {
                Strokes.Add(new Stroke(new Spot(x, y(first)), new Spot(x, y(last))));
            }
        }

        if (plate.Form == Form.Joint)
        {
            Dots.AddRange(plate.Ends.Select(e => e.Row).Distinct().Order().Select(r => new Spot(middle, y(r))));
        }
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
                Signs.Add(new Sign(row.Symbol, new Spot(middle, y)));
                Strokes.Add(new Stroke(new Spot(left, y), new Spot(middle - 10, y)));
                Strokes.Add(new Stroke(new Spot(middle + 10, y), new Spot(left + plate.Width, y)));
            }

            return;
        }

        var symbolFirst = row.Mark.Length == 0 || row.Head;
        if (row.Role == Role.Input)
        {
            Signs.Add(new Sign("arrow", new Spot(left + 6, y)));
        }

        if (row.Role == Role.Output)
        {
            Signs.Add(new Sign("arrow", new Spot(left + plate.Width - 6, y)));
        }

        x += row.Role is Role.Input or Role.Output ? 6 : 0;
        if (row.Symbol is not null && symbolFirst)
        {
            Signs.Add(new Sign(row.Symbol, new Spot(x + 10, y)));
            x += 24;
        }

        var baseline = y + (isAbove ? -1 : Base);
        if (row.Mark.Length > 0)
        {
            Letterings.Add(new Lettering(row.Mark, new Spot(x, baseline), Hold.Start) { Bold = true });
            x += Widths.Of(row.Mark, 16, bold: true) + 6;
        }

        if (row.Symbol is not null && !symbolFirst)
        {
            Signs.Add(new Sign(row.Symbol, new Spot(x + 10, y)));
            x += 24;
        }

        if (row.Words.Length > 0)
        {
            Letterings.Add(new Lettering(row.Words, new Spot(x, baseline), Hold.Start) { Quiet = row.Quiet || isAbove });
        }
    }
}

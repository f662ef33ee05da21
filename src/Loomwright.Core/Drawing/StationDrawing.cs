using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Draws the stations of a function line: the symbol on the line, the name and what it is below.</summary>
internal sealed class StationDrawing(double slot)
{
    private const double Scale = 1.6;
    private const double NameSize = 19;
    private const double BoxHalf = 62;

    public List<Cell> Cells { get; } = [];

    public List<Sign> Signs { get; } = [];

    public List<Stroke> Strokes { get; } = [];

    public List<Spot> Dots { get; } = [];

    public List<Lettering> Letterings { get; } = [];

    /// <summary>Draws one; gives how far from its middle the line ends on either side.</summary>
    public double Station(Station station, Spot at, bool isFirst, bool isLast)
    {
        var (detail, edge) = ("", 10 * Scale);
        if (station.Model.Supply is { } supply && (isFirst || isLast))
        {
            Signs.Add(new Sign(Names.Same(station.In.Terminal, supply.Plus) ? "plus" : "minus", at) { Scale = Scale });
            edge = 8 * Scale;
        }
        else if (station.Model.Controller is not null)
        {
            edge = Math.Min(BoxHalf, (slot / 2) - 10);
            var marks = station.In == station.Out ? station.In.Terminal : $"{station.In.Terminal} to {station.Out.Terminal}";
            Cells.Add(new Cell(station.Part.Name, new Area(at.X - edge, at.Y - 18, edge * 2, 36)));
            Letterings.Add(new Lettering(marks, new Spot(at.X, at.Y + 6), Hold.Middle) { Size = NameSize, Bold = true });
            detail = station.Model.Terminals.FirstOrDefault(t => t.Mark == station.Out.Terminal)?.Name ?? "";
        }
        else if (Returns.IsPlug(station.Model))
        {
            edge = 13;
            Cells.Add(new Cell(station.Part.Name, new Area(at.X - edge, at.Y - 14, edge * 2, 28)));
            Letterings.Add(new Lettering(station.In.Terminal[..^1], new Spot(at.X, at.Y + 5.5), Hold.Middle) { Bold = true });
        }
        else if (Returns.IsPoint(station.Model))
        {
            edge = 0;
            Dots.Add(at);
            if (Symbols.Of(station.Part, station.Model) is { } ground)
            {
                Signs.Add(new Sign(ground, new Spot(at.X, at.Y + 16)) { Scale = Scale });
            }
        }
        else if (station.In == station.Out && !isFirst && !isLast)
        {
            // The line only changes wires on its terminal.
            edge = 0;
            Dots.Add(at);
            detail = $"at {station.In.Terminal}";
        }
        else
        {
            Signs.Add(new Sign(Symbols.Of(station.Part, station.Model) ?? "load", at) { Scale = Scale });
            detail = station.Model.Terminals.Length > 2 && station.In != station.Out ? $"{station.In.Terminal} – {station.Out.Terminal}" : "";
        }

        Named(Plates.Title(station.Part, station.Model), detail, at);
        return edge;
    }

    private void Named(string name, string detail, Spot at)
    {
        var y = at.Y + 50;
        foreach (var part in Broken(name))
        {
            Letterings.Add(new Lettering(part, new Spot(at.X, y), Hold.Middle) { Size = NameSize, Bold = true });
            y += 20;
        }

        if (detail.Length > 0)
        {
            Letterings.Add(new Lettering(detail, new Spot(at.X, y - 1), Hold.Middle) { Quiet = true });
        }
    }

    // A name too wide for its slot goes on in a second line, at the blank nearest to its middle.
    private string[] Broken(string name)
    {
        if (Widths.Of(name, NameSize, bold: true) < slot - 8 || !name.Contains(' ', StringComparison.Ordinal))
        {
            return [name];
        }

        var at = Enumerable.Range(0, name.Length).Where(i => name[i] == ' ').MinBy(i => Math.Abs(i - (name.Length / 2)));
        return [name[..at], name[(at + 1)..]];
    }
}

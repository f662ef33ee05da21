using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Draws the stations of a function line: the symbol on the line, the name and what it is below.</summary>
internal sealed class StationDrawing(Pieces pieces, double slot)
{
    private const double Scale = 1.6;
    private const double NameSize = 19;
    private const double BoxHalf = 32;

    /// <summary>Draws one; gives how far from its middle the line ends on either side.</summary>
    public double Station(Station station, Spot at, bool isFirst, bool isLast)
    {
        var (detail, edge, halfHeight) = ("", 10 * Scale, 0.0);
        if (station.Model.Supply is { } supply && (isFirst || isLast))
        {
            pieces.Signs.Add(new Sign(Names.Same(station.In.Terminal, supply.Plus) ? "plus" : "minus", at) { Scale = Scale, Part = station.Part.Name });
            edge = 8 * Scale;
        }
        else if (station.Model.Controller is not null)
        {
            var marks = station.In == station.Out ? station.In.Terminal : $"{station.In.Terminal} to {station.Out.Terminal}";
            edge = Math.Clamp((Widths.Of(marks, NameSize, bold: true) / 2) + 12, BoxHalf, (slot / 2) - 10);
            halfHeight = 18;
            pieces.Letterings.Add(new Lettering(marks, new Spot(at.X, at.Y + 6), Hold.Middle) { Size = NameSize, Bold = true, Part = station.Part.Name });
            detail = station.Model.Terminals.FirstOrDefault(t => t.Mark == station.Out.Terminal)?.Name ?? "";
            pieces.CaseLights.AddRange(station.Model.Controller.Lights
                .Where(l => Names.Same(l.Terminal, station.Out.Terminal))
                .Select(l => new CaseLight(station.Part.Name, l.Terminal, l.Means, new Spot(at.X + edge - 6, at.Y - 18))));
        }
        else if (Returns.IsPlug(station.Model))
        {
            edge = 13;
            halfHeight = 14;
            pieces.Letterings.Add(new Lettering(station.In.Terminal[..^1], new Spot(at.X, at.Y + 5.5), Hold.Middle) { Bold = true, Part = station.Part.Name });
        }
        else if (Returns.IsPoint(station.Model))
        {
            edge = 0;
            pieces.Dots.Add(at);
            if (Symbols.Of(station.Part, station.Model) is { } ground)
            {
                pieces.Signs.Add(new Sign(ground, new Spot(at.X, at.Y + 16)) { Scale = Scale, Part = station.Part.Name });
            }
        }
        else if (station.In == station.Out && !isFirst && !isLast)
        {
            // The line only changes wires on its terminal.
            edge = 0;
            pieces.Dots.Add(at);
            detail = $"at {station.In.Terminal}";
        }
        else
        {
            pieces.Signs.Add(new Sign(Symbols.Of(station.Part, station.Model) ?? "load", at) { Scale = Scale, Part = station.Part.Name });
            detail = station.Model.Terminals.Length > 2 && station.In != station.Out ? $"{station.In.Terminal} – {station.Out.Terminal}" : "";
        }

        var (halfWidth, isBox) = (Math.Max(edge, 10), halfHeight > 0);
        halfHeight = isBox ? halfHeight : 10 * Scale;
        var area = new Area(at.X - halfWidth, at.Y - halfHeight, halfWidth * 2, halfHeight * 2);
        pieces.Cells.Add(new Cell(station.Part.Name, area) { Kind = station.Part.Kind, Outlined = isBox });
        Pinned(station, area, at, edge);
        pieces.Lights.AddRange(station.Model.Sights.Where(s => s.Element == station.Through?.Name).Select(s => new Light(station.Part.Name, s.Name, area)));
        Named(station, detail, at);
        return edge;
    }

    private void Pinned(Station station, Area area, Spot at, double edge)
    {
        if (station.In == station.Out)
        {
            Add(station.In, area, [at with { X = at.X - edge }, at with { X = at.X + edge }]);
            return;
        }

        var half = area with { Width = area.Width / 2 };
        Add(station.In, half, [at with { X = at.X - edge }]);
        Add(station.Out, half with { X = at.X }, [at with { X = at.X + edge }]);

        void Add(TerminalRef terminal, Area where, ImmutableArray<Spot> ends) => pieces.Pins.Add(new Pin(terminal.Part, terminal.Terminal, where, ends));
    }

    private void Named(Station station, string detail, Spot at)
    {
        var y = at.Y + 50;
        foreach (var part in Broken(Plates.Title(station.Part, station.Model)))
        {
            pieces.Letterings.Add(new Lettering(part, new Spot(at.X, y), Hold.Middle) { Size = NameSize, Bold = true, Part = station.Part.Name });
            y += 20;
        }

        if (detail.Length > 0)
        {
            pieces.Letterings.Add(new Lettering(detail, new Spot(at.X, y - 1), Hold.Middle) { Quiet = true, Part = station.Part.Name });
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

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;

namespace Loomwright.Drawing;

/// <summary>One drawn sheet as plain data. Lengths are pixels at 100 %, 6.4 to the millimetre on paper; x grows to the right, y downward.</summary>
public sealed record Scene
{
    /// <summary>Goes before every id in the drawing, so that two sheets can stand on one page.</summary>
    public required string Id { get; init; }

    public required string Title { get; init; }

    /// <summary>One line that says what the sheet shows.</summary>
    public required string About { get; init; }

    public required double Width { get; init; }

    public required double Height { get; init; }

    /// <summary>The name of the paper it fits at 100 %: A4, A3, or the size in millimetres.</summary>
    public required string Paper { get; init; }

    public int Page { get; init; } = 1;

    public int Pages { get; init; } = 1;

    /// <summary>The file and the first figures of its hash; empty when the design was not read from a file.</summary>
    public string Source { get; init; } = "";

    public ImmutableArray<Room> Rooms { get; init; } = [];

    /// <summary>One for each part on the sheet; on a function sheet, one for each place the part is drawn at.</summary>
    public ImmutableArray<Cell> Cells { get; init; } = [];

    public ImmutableArray<Pin> Pins { get; init; } = [];

    public ImmutableArray<Light> Lights { get; init; } = [];

    public ImmutableArray<CaseLight> CaseLights { get; init; } = [];

    /// <summary>In the order they are drawn: a later one lies on top at a crossing.</summary>
    public ImmutableArray<Strand> Strands { get; init; } = [];

    public ImmutableArray<Sign> Signs { get; init; } = [];

    public ImmutableArray<Stroke> Strokes { get; init; } = [];

    public ImmutableArray<Spot> Dots { get; init; } = [];

    public ImmutableArray<Lettering> Letterings { get; init; } = [];

    /// <summary>The stops of the wire that is followed, in order; empty on other sheets.</summary>
    public ImmutableArray<Stop> Stops { get; init; } = [];

    /// <summary>The part of the sheet that holds the wire that is followed, with the boxes of its stops; the whole sheet where none is.</summary>
    public Area Around()
    {
        const double margin = 20;
        var boxes = Cells.Where(c => Stops.Any(s => s.Part == c.Part)).SelectMany(c => new[] { new Spot(c.Area.X, c.Area.Y), new Spot(c.Area.Right, c.Area.Bottom) });
        var spots = Strands.Where(s => s.Strong).SelectMany(s => s.Path).Concat(Stops.Select(s => s.At)).Concat(boxes).ToList();
        var (left, top) = spots.Count == 0 ? (0, 0) : (Math.Max(0, spots.Min(s => s.X) - margin), Math.Max(0, spots.Min(s => s.Y) - margin));
        return spots.Count == 0 ? new Area(0, 0, Width, Height)
            : new Area(left, top, Math.Min(Width, spots.Max(s => s.X) + margin) - left, Math.Min(Height, spots.Max(s => s.Y) + margin) - top);
    }

    /// <summary>Wires there was no room for as a line: a flag of the same number stands at both their ends.</summary>
    public ImmutableArray<string> Flags { get; init; } = [];

    /// <summary>Wires the sheet should show and could not.</summary>
    public ImmutableArray<string> Unrouted { get; init; } = [];
}

/// <summary>A point of a sheet.</summary>
public readonly record struct Spot(double X, double Y);

/// <summary>A rectangle of a sheet by its upper left corner.</summary>
public readonly record struct Area(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;

    public double Bottom => Y + Height;

    /// <summary>The part of it that keeps off its edge by so much.</summary>
    public Area Inside(double by) => new(X + by, Y + by, Width - (2 * by), Height - (2 * by));

    /// <summary>Whether the two share more than an edge.</summary>
    public bool Meets(Area other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;
}

/// <summary>A pale block behind the parts of one place.</summary>
public sealed record Room(string Name, Area Area)
{
    /// <summary>The name, in its upper left corner.</summary>
    internal Lettering Lettering => new(Name, new Spot(Area.X + 6, Area.Y + 14), Hold.Start) { Bold = true, Quiet = true };
}

/// <summary>The rectangle of a part.</summary>
public sealed record Cell(string Part, Area Area)
{
    /// <summary>The name of its kind.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Drawn pale: not what the sheet is about.</summary>
    public bool Quiet { get; init; }

    /// <summary>False for what is drawn as dots on a bar or as a symbol alone: wires run into the rectangle.</summary>
    public bool Outlined { get; init; } = true;
}

/// <summary>A terminal of a part: the rectangle of its row, or of its half of the row, and the points where wires end on it.</summary>
/// <param name="Terminal">Its mark; empty for a part that is one point.</param>
public sealed record Pin(string Part, string Terminal, Area Area, ImmutableArray<Spot> Ends);

/// <summary>Where on the sheet something of a part is seen or heard.</summary>
/// <param name="Sight">The name of what is seen, empty when the part has one only.</param>
public sealed record Light(string Part, string Sight, Area Area);

/// <summary>The small light a box has beside one of its terminals.</summary>
/// <param name="Means">What it follows.</param>
public sealed record CaseLight(string Part, string Terminal, LightMeans Means, Spot Middle);

/// <summary>A wire as a path of level and upright runs from its first end to its second.</summary>
/// <param name="Wire">The wire's name.</param>
/// <param name="Colour">Insulation colour, or null when unknown.</param>
/// <param name="SquareMillimetres">Nominal cross-section.</param>
public sealed record Strand(string Wire, WireColour? Colour, double SquareMillimetres, ImmutableArray<Spot> Path)
{
    /// <summary>Drawn as a thin pale line: it is there, but not what the sheet is about.</summary>
    public bool Quiet { get; init; }

    /// <summary>Drawn as the widest wire there is.</summary>
    public bool Strong { get; init; }
}

/// <summary>A stop of a wire that is followed.</summary>
/// <param name="Number">From 1, along the way.</param>
/// <param name="Words">What stands there: the part, its terminal, and the wire that goes on.</param>
public sealed record Stop(int Number, string Part, string Terminal, Spot At, string Words);

/// <summary>A circuit symbol around its middle.</summary>
public sealed record Sign(string Symbol, Spot Middle)
{
    /// <summary>1 is 20 pixels square.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>The part it belongs to, or null.</summary>
    public string? Part { get; init; }

    /// <summary>The wire that is drawn as this ground symbol, or null.</summary>
    public string? Return { get; init; }
}

/// <summary>A straight line of the drawing itself: a bar that joins the rows of one terminal.</summary>
public sealed record Stroke(Spot From, Spot To);

/// <summary>Which end of a text stands at its point.</summary>
public enum Hold
{
    Start,
    Middle,
    End,
}

/// <summary>A text on its base line.</summary>
public sealed record Lettering(string Text, Spot At, Hold Hold)
{
    /// <summary>Pixels; 16 is 2.5 mm on paper, the smallest there is.</summary>
    public double Size { get; init; } = 16;

    public bool Bold { get; init; }

    public bool Quiet { get; init; }

    /// <summary>The wire it labels, or null.</summary>
    public string? Wire { get; init; }

    /// <summary>The number of a stop, in a ring.</summary>
    public bool Numbered { get; init; }

    /// <summary>The part it tells of, or null.</summary>
    public string? Part { get; init; }

    /// <summary>The wire that is drawn as a ground symbol with this text beside it, or null.</summary>
    public string? Return { get; init; }

    /// <summary>How wide it is drawn, in whatever face.</summary>
    public double Width => Widths.Of(Text, Size, Bold);

    /// <summary>The rectangle it covers, from the head of a capital to the foot of a descender (only to the base line for a wire's label: capitals and figures).</summary>
    public Area Area => new(
        At.X - (Hold == Hold.Start ? 0 : Hold == Hold.Middle ? Width / 2 : Width),
        At.Y - (Size * Widths.Capital),
        Width,
        Size * (Wire is null ? Widths.Capital + Widths.Descender : Widths.Capital));
}

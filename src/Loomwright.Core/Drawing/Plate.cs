using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>How a part is drawn.</summary>
internal enum Form
{
    /// <summary>A head and a row for each terminal.</summary>
    Table,

    /// <summary>Symbol and name in the row of its one live wire, the return below.</summary>
    Short,

    /// <summary>Two terminals on opposite sides, the symbol between.</summary>
    Through,

    /// <summary>A slim cell of cavities.</summary>
    Plug,

    /// <summary>One point: a bar without outline.</summary>
    Joint,

    /// <summary>The name of a terminal on another sheet.</summary>
    Flag,
}

/// <summary>A part on the sheet: its rows, and in which column it stands. Made once; only where it stands changes.</summary>
internal sealed class Plate(int index, Part part, Model model, Form form, bool isLate)
{
    public int Index { get; } = index;

    public Part Part { get; } = part;

    public Model Model { get; } = model;

    public Form Form { get; } = form;

    public int Column { get; set; }

    /// <summary>Its first terminal, or side a of a plug, faces right.</summary>
    public bool FirstRight { get; set; }

    /// <summary>Both ends of what lies in a wire face one way.</summary>
    public bool OneSided { get; set; }

    /// <summary>It came after the sheet was arranged.</summary>
    public bool IsLate { get; } = isLate;

    public List<End> Ends { get; } = [];

    /// <summary>Ends that came after the sheet was arranged; they take what place is left.</summary>
    public List<End> LaterEnds { get; } = [];

    public List<PlateRow> Rows { get; } = [];

    /// <summary>Ends that share a terminal and a side, with the first of their rows; any order of them is the same wiring.</summary>
    public List<(List<End> Ends, int FirstRow)> Shared { get; } = [];

    /// <summary>First and last row of a terminal that needs several.</summary>
    public List<(int First, int Last)> Bars { get; } = [];

    /// <summary>The rows of each terminal; of one side only where a row holds two, as in a plug.</summary>
    public List<(string Mark, int First, int Last, bool? Right)> Pins { get; } = [];

    /// <summary>Of the outline that wires end at.</summary>
    public double Width { get; set; }

    /// <summary>Of everything, the name above included.</summary>
    public double Footprint { get; set; }

    /// <summary>The key of its place in the form names are compared in; empty when it has none.</summary>
    public string Place { get; } = Names.Fold(part.Place ?? "");
}

/// <summary>One row of a plate: the mark in bold, then the words.</summary>
internal sealed record PlateRow(string Mark, string Words)
{
    public bool Head { get; init; }

    public bool Quiet { get; init; }

    public string? Symbol { get; init; }

    public Role Role { get; init; }

    /// <summary>The wire that is drawn as this row's ground symbol, or null.</summary>
    public string? Return { get; init; }
}

/// <summary>One end of a drawn wire.</summary>
internal sealed class End(Plate plate, string mark)
{
    public Plate Plate { get; } = plate;

    public string Mark { get; } = mark;

    public bool Right { get; set; }

    /// <summary>-1 where it has none.</summary>
    public int Row { get; set; } = -1;

    /// <summary>The channel it leaves into: channel k lies left of column k.</summary>
    public int Channel => Plate.Column + (Right ? 1 : 0);
}

/// <summary>A wire drawn as a line.</summary>
internal sealed record Line(int Index, Wire Wire, End A, End B)
{
    public string Label { get; } = Labels.Of(Wire);

    public double LabelWidth { get; } = Widths.Of(Labels.Of(Wire), 16, bold: false);
}

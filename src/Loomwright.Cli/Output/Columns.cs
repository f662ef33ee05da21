using Spectre.Console;
using Words = Spectre.Console.Text;

namespace Loomwright.Output;

/// <summary>The one look of our tables: headings over a rule, no box.</summary>
internal static class Columns
{
    public static Table Under(params string[] headings)
    {
        var table = new Table { Border = TableBorder.Simple };
        foreach (var heading in headings)
        {
            table.AddColumn(new TableColumn(new Words(heading)));
        }

        return table;
    }

    /// <summary>A row of plain text.</summary>
    public static Table Row(this Table table, params string[] cells) => table.AddRow(cells.Select(c => new Words(c)));

    /// <summary>Draws a table; its foot is a free line. In place of an empty one <paramref name="none"/> is said, or nothing.</summary>
    public static void Show(this Screen screen, Table table, string? none = null)
    {
        if (table.Rows.Count > 0)
        {
            screen.Write(table);
        }
        else if (none is not null)
        {
            screen.Line(none);
        }
    }
}

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

    /// <summary>Draws a table; its foot is a free line. An empty one is left out.</summary>
    public static void Show(this Screen screen, Table table)
    {
        if (table.Rows.Count > 0)
        {
            screen.Write(table);
        }
    }
}

using Spectre.Console;
using Spectre.Console.Rendering;
using Words = Spectre.Console.Text;

namespace Loomwright.Output;

/// <summary>Where a verb writes: answers to <paramref name="Out"/>, everything else to <paramref name="Error"/>.</summary>
/// <param name="Out">Takes the answer and nothing but the answer.</param>
/// <param name="Error">Takes messages and progress.</param>
/// <param name="Tables">Draws on <paramref name="Out"/>; knows its width and whether it has colour.</param>
public sealed record Screen(TextWriter Out, TextWriter Error, IAnsiConsole Tables)
{
    /// <summary>Columns used when the answer goes to a file or another program.</summary>
    public const int PipedColumns = 100;

    /// <summary>The terminal this process was started in. Colour and the full width only when a person is looking.</summary>
    public static Screen OfThisProcess() => On(Console.Out, Console.Error, piped: Console.IsOutputRedirected);

    /// <summary>A screen on any pair of writers.</summary>
    public static Screen On(TextWriter output, TextWriter error, bool piped)
    {
        var tables = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = piped ? AnsiSupport.No : AnsiSupport.Detect,
            ColorSystem = piped ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(output),
        });
        if (piped)
        {
            tables.Profile.Width = PipedColumns;
        }

        return new Screen(output, error, tables);
    }

    /// <summary>One line of the answer, wrapped at the width.</summary>
    public void Line(string text = "") => Tables.Write(new Words(text + "\n"));

    /// <summary>A label with its text beside it; what does not fit the width goes on under the text.</summary>
    public void Item(string label, string text, string style = "default") => Tables.Write(new Grid { Expand = false }
        .AddColumn(new GridColumn { NoWrap = true, Padding = new Padding(0, 0, 2, 0) })
        .AddColumn(new GridColumn { Padding = new Padding(0) })
        .AddRow(new Words(label, Style.Parse(style)), new Words(text, Style.Parse(style))));

    public void Write(IRenderable drawing) => Tables.Write(drawing);

    /// <summary>Says what was wrong with the call; gives the exit code for it.</summary>
    public int WrongUsage(string message)
    {
        Error.WriteLine(message);
        return ExitCode.WrongUsage;
    }
}

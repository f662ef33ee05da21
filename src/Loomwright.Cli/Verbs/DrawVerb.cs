using System.ComponentModel;
using System.Text;
using Loomwright.Drawing;
using Loomwright.Output;
using Loomwright.Text;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>draw FILE</c>: the picture.</summary>
public sealed class DrawVerb(Screen screen) : Command<DrawVerb.Settings>
{
    public const string Name = "draw";

    private const string Ending = ".svg";

    // Enough of a hash to tell two prints apart.
    private const int HashFigures = 6;

    /// <summary>What to draw, and where it goes.</summary>
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("The design, a file that ends in .loom.yaml")]
        public string File { get; init; } = "";

        [CommandOption("--out <SVG>")]
        [Description("Write the drawing to this file, which ends in .svg. Without it: to the answer")]
        public string? Out { get; init; }

        [CommandOption("--function <NAME>")]
        [Description("One function, from plus through fuse, switch and load to minus, in place of the overview")]
        public string? Function { get; init; }

        [CommandOption("--trials <COUNT>")]
        [Description("How many arrangements to look at, 1 to 1000000. Default 6000")]
        public int? Trials { get; init; }

        [CommandOption("--dim")]
        [Description("For a dark screen")]
        public bool Dim { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<DrawVerb>(Name)
        .WithDescription("The picture as SVG: every part and every wire on a sheet to print")
        .WithExample(Name, "my-bike.loom.yaml", "--out", "my-bike.svg")
        .WithExample(Name, "my-bike.loom.yaml", "--function", "\"stop lamp\"", "--out", "stop-lamp.svg");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Trials is < 1 or > 1_000_000)
        {
            return screen.WrongUsage("--trials: write a count from 1 to 1000000.");
        }

        // A slip must not write over the design.
        if (settings.Out?.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) == false)
        {
            return screen.WrongUsage($"--out {settings.Out}: the drawing goes into a file that ends in {Ending}.");
        }

        var design = OpenedDesign.OpenUnderstood(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        if (settings.Function is { } name && !design.Bike.Loom!.Functions.Any(f => Names.Same(f.Name, name)))
        {
            return screen.WrongUsage(Choosing.None("function", name, [.. design.Bike.Loom.Functions.Select(f => f.Name)]));
        }

        var drawn = settings.Function is null ? design.Bike.Overview(settings.Trials ?? Sheets.UsualTrials) : design.Bike.FunctionSheet(settings.Function)!;
        var sheet = drawn with { Source = $"{Path.GetFileName(design.Stored.Path)}  {design.Stored.Sha256?[..HashFigures]}" };
        try
        {
            return design.Exit(!Give(sheet, settings));
        }
        catch (Exception e) when (settings.Out is not null && e is (IOException or UnauthorizedAccessException))
        {
            return screen.WrongUsage($"--out {settings.Out}: the file cannot be written there. {e.Message}");
        }
    }

    private bool Give(Scene sheet, Settings settings)
    {
        var svg = Svg.Write(sheet, settings.Dim);
        var flaws = Flaws.Of(sheet);
        if (settings.Out is null)
        {
            screen.Out.Write(svg);
            return flaws.None;
        }

        File.WriteAllText(settings.Out, svg, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        screen.Line(FormattableString.Invariant(
            $"{settings.Out}: {sheet.Paper} at 100 %, {sheet.Strands.Length} wires drawn, {flaws.Crossings} crossings (straight lines: {flaws.StraightCrossings})."));
        if (!flaws.None)
        {
            screen.Error.WriteLine(FormattableString.Invariant(
                $"The sheet is not clean: {flaws.Overlaps} overlaps, {flaws.Touches} touches, {flaws.ThroughCells} wires through parts, {flaws.CollidingLabels} labels on something, not drawn: {(sheet.Unrouted.IsEmpty ? "none" : string.Join(", ", sheet.Unrouted))}."));
        }

        return flaws.None;
    }
}

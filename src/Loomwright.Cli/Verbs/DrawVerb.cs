using System.Collections.Immutable;
using System.ComponentModel;
using System.Globalization;
using System.Text;
using Loomwright.Drawing;
using Loomwright.Output;
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

        [CommandOption("--place <NAME>")]
        [Description("The parts of one place in full, with flags for what leaves it")]
        public string? Place { get; init; }

        [CommandOption("--plug <NAME>")]
        [Description("One plug, cavity by cavity, to tick off at the bike")]
        public string? Plug { get; init; }

        [CommandOption("--wire <NAME>")]
        [Description("The overview with one wire to follow, stop by stop")]
        public string? Wire { get; init; }

        [CommandOption("--trials <COUNT>")]
        [Description("How many arrangements to look at, 1 to 1000000. Default 6000")]
        public int? Trials { get; init; }

        [CommandOption("--a4")]
        [Description("Cut a larger sheet into A4 pages: my-bike-1.svg, my-bike-2.svg; needs --out")]
        public bool A4 { get; init; }

        [CommandOption("--dim")]
        [Description("For a dark screen")]
        public bool Dim { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<DrawVerb>(Name)
        .WithDescription("The picture as SVG: every part and every wire on a sheet to print")
        .WithExample(Name, "my-bike.loom.yaml", "--out", "my-bike.svg")
        .WithExample(Name, "my-bike.loom.yaml", "--function", "\"stop lamp\"", "--out", "stop-lamp.svg")
        .WithExample(Name, "my-bike.loom.yaml", "--wire", "\"stop lamp feed\"", "--out", "feed.svg");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Trials is < 1 or > 1_000_000)
        {
            return screen.WrongUsage("--trials: write a count from 1 to 1000000.");
        }

        if (new[] { settings.Function, settings.Place, settings.Plug, settings.Wire }.Count(s => s is not null) > 1)
        {
            return screen.WrongUsage("name one of --function, --place, --plug and --wire: each is a sheet of its own.");
        }

        // A slip must not write over the design.
        if (settings.Out?.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) == false)
        {
            return screen.WrongUsage($"--out {settings.Out}: the drawing goes into a file that ends in {Ending}.");
        }

        if (settings is { A4: true, Out: null } or { A4: true, Dim: true })
        {
            return screen.WrongUsage("--a4 writes pages to print: name the file they are called after with --out, and leave --dim out.");
        }

        var design = OpenedDesign.OpenUnderstood(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        var (kind, of) = Asked(settings);
        if (design.Bike.Sheet(kind, of, settings.Trials ?? Sheets.UsualTrials) is not { } drawn)
        {
            return screen.WrongUsage(Choosing.None(Word(kind), of, Known(design.Bike, kind)));
        }

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

    private static (SheetKind Kind, string Of) Asked(Settings settings) => settings switch
    {
        { Function: { } function } => (SheetKind.Function, function),
        { Place: { } place } => (SheetKind.Place, place),
        { Plug: { } plug } => (SheetKind.Plug, plug),
        { Wire: { } wire } => (SheetKind.Wire, wire),
        _ => (SheetKind.Overview, ""),
    };

    private static string Word(SheetKind kind) => kind switch
    {
        SheetKind.Function => "function",
        SheetKind.Place => "place",
        SheetKind.Plug => "plug",
        _ => "wire",
    };

    private static ImmutableArray<string> Known(Bike bike, SheetKind kind) => kind == SheetKind.Wire
        ? [.. bike.Loom!.Wires.Select(w => w.Name)]
        : [.. bike.Sheets.Where(s => s.Kind == kind).Select(s => s.Of)];

    private static void Write(string path, ImmutableArray<string> pages)
    {
        foreach (var (page, number) in pages.Select((p, i) => (p, i + 1)))
        {
            var named = pages.Length == 1 ? path : string.Create(CultureInfo.InvariantCulture, $"{path[..^Ending.Length]}-{number}{Ending}");
            File.WriteAllText(named, page, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
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

        Write(settings.Out, settings.A4 ? A4Pages.Of(sheet) : [svg]);
        screen.Line(FormattableString.Invariant(
            $"{settings.Out}: {sheet.Paper} at 100 %, {sheet.Strands.Length} wires drawn, {flaws.Crossings} crossings (straight lines: {flaws.StraightCrossings})."));
        if (!sheet.Flags.IsEmpty)
        {
            screen.Line($"No room for a line, so a pair of flags: {string.Join(", ", sheet.Flags)}. Arrange the sheet anew to have them as lines.");
        }

        foreach (var stop in sheet.Stops)
        {
            screen.Line(FormattableString.Invariant($"{stop.Number}. {stop.Words}"));
        }

        if (!flaws.None)
        {
            screen.Error.WriteLine(FormattableString.Invariant(
                $"The sheet is not clean: {flaws.Overlaps} overlaps, {flaws.Touches} touches, {flaws.ThroughCells} wires through parts, {flaws.CollidingLabels} labels on something, not drawn: {(sheet.Unrouted.IsEmpty ? "none" : string.Join(", ", sheet.Unrouted))}."));
        }

        return flaws.None;
    }
}

using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Answers;
using Loomwright.Findings;
using Loomwright.Fixes;
using Loomwright.Live;
using Loomwright.Output;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>check FILE</c>: what is wrong, or worth a look, in a design; with <c>--fix</c> one cure is written first.</summary>
public sealed class CheckVerb(Screen screen) : Command<CheckVerb.Settings>
{
    public const string Name = "check";

    /// <summary>What is checked, and what is to be cured.</summary>
    public sealed class Settings : FileSettings
    {
        [CommandOption("--fix <ID>")]
        [Description("Write one of the fixes the check offers into the file, then check again")]
        public string? Fix { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<CheckVerb>(Name)
        .WithDescription("What is wrong in a design, or worth a look: what, why, and what to do")
        .WithExample(Name, "examples/kittiwake-bench/kittiwake-bench.loom.yaml")
        .WithExample(Name, "my-bike.loom.yaml", "--fix", "exchange-tail-lamp")
        .WithExample(Name, "my-bike.loom.yaml", "--json");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var design = OpenedDesign.Open(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        TriedFix? written = null;
        if (settings.Fix is not null)
        {
            if (design.Bike.Fixes.FirstOrDefault(f => f.Id == settings.Fix) is not { } fix)
            {
                return screen.WrongUsage(Choosing.None("fix", settings.Fix, [.. design.Bike.Fixes.Select(f => f.Id)]));
            }

            written = design.Bike.Try(fix);
            if (NotWritten(settings.File, design, written) is { } why)
            {
                screen.Error.WriteLine($"{settings.File}: nothing was written. {why}");
                return ExitCode.Unreadable;
            }

            design = OpenedDesign.Open(settings.File, screen);
        }

        return design is null ? ExitCode.Unreadable : Answer(settings, design, written);
    }

    private int Answer(Settings settings, OpenedDesign design, TriedFix? written)
    {
        var found = design.Bike.ReadingFindings.AddRange(design.Bike.Check())
            .OrderByDescending(f => f.Severity)
            .ThenBy(f => design.Bike.Place(f.Where).Start)
            .ToImmutableArray();
        if (settings.Json)
        {
            screen.Out.WriteLine(new CheckAnswer(design, found, written).ToJson());
            return Exit(design, found);
        }

        if (written is not null)
        {
            FindingsView.Write(screen, settings.File, written);
        }

        FindingsView.Write(screen, design, found);
        return Exit(design, found);
    }

    private static int Exit(OpenedDesign design, ImmutableArray<Finding> found) =>
        design.Bike.Loom is null ? ExitCode.Unreadable : design.Exit(found.Any(f => f.Severity >= Severity.Look));

    // Through the one live document of the file, so that a page open on it sees the same; null when it is written.
    private static string? NotWritten(string path, OpenedDesign design, TriedFix tried)
    {
        if (tried.Objection is not null)
        {
            return tried.Objection;
        }

        using var folder = new LiveFolder(Path.GetDirectoryName(Path.GetFullPath(path))!);
        return folder.Find(Path.GetFileName(path)) is not { } file ? "Only a file that ends in .loom.yaml and is no link is written to."
            : file.Apply(design.Stored.Sha256!, tried.Fix.Edits, "check --fix") is Written.Refused no ? $"{no.What}; {no.Cure}."
            : null;
    }
}

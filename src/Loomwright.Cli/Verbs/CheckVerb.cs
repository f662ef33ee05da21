using System.Collections.Immutable;
using Loomwright.Answers;
using Loomwright.Findings;
using Loomwright.Output;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>check FILE</c>: what is wrong, or worth a look, in a design.</summary>
public sealed class CheckVerb(Screen screen) : Command<FileSettings>
{
    public const string Name = "check";

    public static void AddTo(IConfigurator config) => config.AddCommand<CheckVerb>(Name)
        .WithDescription("What is wrong in a design, or worth a look: what, why, and what to do")
        .WithExample(Name, "examples/kittiwake-bench/kittiwake-bench.loom.yaml")
        .WithExample(Name, "my-bike.loom.yaml", "--json");

    public override int Execute(CommandContext context, FileSettings settings, CancellationToken cancellationToken)
    {
        var design = OpenedDesign.Open(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        var found = design.Bike.ReadingFindings.AddRange(design.Bike.Check())
            .OrderByDescending(f => f.Severity)
            .ThenBy(f => design.Bike.Place(f.Where).Start)
            .ToImmutableArray();
        if (settings.Json)
        {
            screen.Out.WriteLine(new CheckAnswer(design, found).ToJson());
        }
        else
        {
            FindingsView.Write(screen, design, found);
        }

        return design.Bike.Loom is null ? ExitCode.Unreadable : design.Exit(found.Any(f => f.Severity >= Severity.Look));
    }
}

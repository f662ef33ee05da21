using System.ComponentModel;
using Loomwright.Answers;
using Loomwright.Bench;
using Loomwright.Output;
using Loomwright.Proof;
using Loomwright.Quantities;
using Loomwright.Text;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>plan FILE</c>: the staged way onto the bench.</summary>
public sealed class PlanVerb(Screen screen) : Command<PlanVerb.Settings>
{
    public const string Name = "plan";

    /// <summary>What the bench has, besides the file.</summary>
    public sealed class Settings : FileSettings
    {
        [CommandOption("--supply <AMPS>")]
        [Description("Feed the bench from a 13.0 V supply that gives this much, as 5A, in place of the design's own")]
        public string? Supply { get; init; }

        [CommandOption("--on-table <PART>")]
        [Description("A part you have on the table; repeat for each. Without it: all of them")]
        public string[] OnTable { get; init; } = [];

        [CommandOption("--one-of-each")]
        [Description("Only what brings something new: one lamp of each sort, one switch, one flashing output")]
        public bool OneOfEach { get; init; }

        [CommandOption("--on-the-bike")]
        [Description("The second plan, for the finished loom on the bike: dead checks to charging")]
        public bool OnTheBike { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<PlanVerb>(Name)
        .WithDescription("The bench plan: what to connect, measure and operate, stage by stage, and what to expect")
        .WithExample(Name, "my-bike.loom.yaml")
        .WithExample(Name, "my-bike.loom.yaml", "--supply", "5A");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var design = OpenedDesign.OpenUnderstood(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        Current? limit = null;
        if (settings.Supply is not null)
        {
            if (Typed.Read(settings.Supply, Unit.Amp) is not Typed.Quantity { Si: >= 0.1 and <= 100 } amps)
            {
                return screen.WrongUsage($"--supply {settings.Supply}: write the amps it gives, 0.1A to 100A, as 5A.");
            }

            limit = new Current(amps.Si);
        }

        var parts = design.Bike.Loom!.Parts.Select(p => p.Name).ToList();
        if (settings.OnTable.FirstOrDefault(name => !parts.Contains(name, Names.Comparer)) is { } unknown)
        {
            return screen.WrongUsage(Choosing.None("part", unknown, parts));
        }

        if (settings.OnTheBike && (limit is not null || settings.OneOfEach || settings.OnTable.Length > 0))
        {
            return screen.WrongUsage("--on-the-bike: there it is the whole loom on its own battery; leave --supply, --on-table and --one-of-each out.");
        }

        var proven = settings.OnTheBike ? Proven.Not(design.Bike.PlanOnTheBike()) : design.Bike.Proof(new PlanOptions { BenchSupplyLimit = limit, OnTable = [.. settings.OnTable], OneOfEach = settings.OneOfEach });
        if (settings.Json)
        {
            screen.Out.WriteLine(new PlanAnswer(design, proven).ToJson());
        }
        else
        {
            PageView.Inset(screen, PlanText.Of(proven.Plan) + (proven.Coverage.Faults.IsEmpty ? "" : "\n" + ProofText.Of(proven)));
        }

        return design.Exit(!proven.Plan.PutRightFirst.IsEmpty);
    }
}

using System.ComponentModel;
using Loomwright.Answers;
using Loomwright.Output;
using Loomwright.Sizing;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>size FILE</c>: wires and fuses against what flows, by a rule that is named.</summary>
public sealed class SizeVerb(Screen screen) : Command<SizeVerb.Settings>
{
    public const string Name = "size";

    /// <summary>By which rule.</summary>
    public sealed class Settings : FileSettings
    {
        [CommandOption("--rule <NAME>")]
        [Description("Judge by this ampacity rule in place of the design's own")]
        public string? Rule { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<SizeVerb>(Name)
        .WithDescription("Wires and fuses against what flows: how warm, behind which fuse, what size is enough and why")
        .WithExample(Name, "my-bike.loom.yaml")
        .WithExample(Name, "my-bike.loom.yaml", "--rule", "33 CFR 183.425");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var design = OpenedDesign.OpenUnderstood(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        var conditions = design.Bike.Loom!.Conditions;
        var rule = settings.Rule is { } named ? AmpacityRules.Find(named) : AmpacityRules.Of(conditions);
        if (rule is null)
        {
            return screen.WrongUsage(NoRule(settings.Rule!));
        }

        if (settings.Rule is null && AmpacityRules.Unknown(conditions) is { } unknown)
        {
            screen.Error.WriteLine($"{NoRule(unknown)} Sized by {rule.Name}.");
        }

        var sized = design.Bike.Size(rule);
        if (settings.Json)
        {
            screen.Out.WriteLine(new SizeAnswer(design, sized).ToJson());
        }
        else
        {
            SizeView.Write(screen, sized);
        }

        return design.Exit(look: false);
    }

    private static string NoRule(string name) => Choosing.None("ampacity rule", name, [.. AmpacityRules.All.Select(r => r.Name)]);
}

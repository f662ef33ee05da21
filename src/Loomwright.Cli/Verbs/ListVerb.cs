using System.ComponentModel;
using Loomwright.Answers;
using Loomwright.Output;
using Loomwright.Parts;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>list parts|controls|faults FILE</c> and <c>list kinds</c>: the names the other verbs take.</summary>
public sealed class ListVerb(Screen screen) : Command<ListVerb.Settings>
{
    public const string Name = "list";

    private static readonly string[] Lists = ["parts", "controls", "faults", "kinds"];

    /// <summary>What to list, and from which design.</summary>
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<WHAT>")]
        [Description("parts, controls, faults or kinds")]
        public string What { get; init; } = "";

        [CommandArgument(1, "[FILE]")]
        [Description("The design; for kinds nothing, or the name of one kind")]
        public string? Of { get; init; }

        [CommandOption("--effects")]
        [Description("With faults and --json: which can harm, and which look alike; takes a while")]
        public bool Effects { get; init; }

        [CommandOption("--json")]
        [Description("Answer for a machine to read")]
        public bool Json { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<ListVerb>(Name)
        .WithDescription("The parts, controls or possible faults of a design; the kinds of part there are")
        .WithExample(Name, "controls", "my-bike.loom.yaml")
        .WithExample(Name, "kinds", "lamp");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (!Lists.Contains(settings.What))
        {
            return screen.WrongUsage(Choosing.None("list", settings.What, Lists));
        }

        if (settings.What == "kinds")
        {
            return ListKinds(settings);
        }

        if (settings.Of is null)
        {
            return screen.WrongUsage($"Name the design: loomwright list {settings.What} FILE.");
        }

        var design = OpenedDesign.OpenUnderstood(settings.Of, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        (Answer Answer, Action View) list = settings.What switch
        {
            "parts" => (new PartsAnswer(design), () => ListViews.Parts(screen, design)),
            "controls" => (new ControlsAnswer(design), () => ListViews.Controls(screen, design)),
            _ => (new FaultsAnswer(design, settings.Effects && settings.Json), () => ListViews.Faults(screen, design)),
        };
        Tell(settings, list.Answer, list.View);
        return design.Exit(look: false);
    }

    private int ListKinds(Settings settings)
    {
        if (settings.Of is null)
        {
            Tell(settings, new KindsAnswer(Kinds.All), () => ListViews.Kinds(screen));
        }
        else if (Kinds.Find(settings.Of) is { } kind)
        {
            Tell(settings, new KindsAnswer([kind]), () => ListViews.Kind(screen, kind));
        }
        else
        {
            return screen.WrongUsage(Choosing.None("kind", settings.Of, [.. Kinds.All.Select(k => k.Name)]));
        }

        return ExitCode.Answered;
    }

    private void Tell(Settings settings, Answer answer, Action view)
    {
        if (settings.Json)
        {
            screen.Out.WriteLine(answer.ToJson());
        }
        else
        {
            view();
        }
    }
}

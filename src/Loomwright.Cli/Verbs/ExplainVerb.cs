using System.ComponentModel;
using Loomwright.Answers;
using Loomwright.Findings;
using Loomwright.Output;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>explain FINDING</c>: the page about one kind of finding.</summary>
public sealed class ExplainVerb(Screen screen) : Command<ExplainVerb.Settings>
{
    public const string Name = "explain";

    /// <summary>Which finding.</summary>
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FINDING>")]
        [Description("The code that check prints, such as unfused-feed")]
        public string Finding { get; init; } = "";

        [CommandOption("--json")]
        [Description("Answer for a machine to read")]
        public bool Json { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<ExplainVerb>(Name)
        .WithDescription("What a finding means, why it matters and what to do, with an example")
        .WithExample(Name, "unfused-feed");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Page.Find(settings.Finding) is not { } page)
        {
            return screen.WrongUsage(Choosing.None("finding", settings.Finding, [.. Page.All.Select(p => p.Code)]));
        }

        if (settings.Json)
        {
            screen.Out.WriteLine(new ExplainAnswer(page).ToJson());
        }
        else
        {
            PageView.Markdown(screen, page.Text);
        }

        return ExitCode.Answered;
    }
}

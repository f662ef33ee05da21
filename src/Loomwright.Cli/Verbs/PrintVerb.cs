using System.ComponentModel;
using System.Text;
using Loomwright.Output;
using Loomwright.Print;
using Loomwright.Proof;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>print --phone FILE</c>: what leaves the program as a file of its own.</summary>
public sealed class PrintVerb(Screen screen) : Command<PrintVerb.Settings>
{
    public const string Name = "print";

    private const string Ending = ".html";

    /// <summary>What to print, and where it goes.</summary>
    public sealed class Settings : CommandSettings
    {
        [CommandOption("--phone <FILE>")]
        [Description("The plan of this design as one HTML file for a phone; it needs no server and keeps its ticks")]
        public string? Phone { get; init; }

        [CommandOption("--on-the-bike")]
        [Description("The plan on the bike in place of the bench plan")]
        public bool OnTheBike { get; init; }

        [CommandOption("-o|--out <HTML>")]
        [Description("Write to this file, which ends in .html. Without it: to the answer")]
        public string? Out { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<PrintVerb>(Name)
        .WithDescription("The plan as one HTML file for a phone, without a server")
        .WithExample(Name, "--phone", "my-bike.loom.yaml", "-o", "plan.html");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Phone is not { } file)
        {
            return screen.WrongUsage("print: say what to print, as print --phone my-bike.loom.yaml -o plan.html.");
        }

        // A slip must not write over the design.
        if (settings.Out?.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) == false)
        {
            return screen.WrongUsage($"--out {settings.Out}: the page goes into a file that ends in {Ending}.");
        }

        if (OpenedDesign.OpenUnderstood(file, screen) is not { } design)
        {
            return ExitCode.Unreadable;
        }

        var proven = settings.OnTheBike ? Proven.Not(design.Bike.PlanOnTheBike()) : design.Bike.Proof();
        var page = PhonePlan.Of(proven, design.Bike.Loom!, Path.GetFileName(design.Stored.Path), design.Stored.Sha256 ?? "");
        if (settings.Out is null)
        {
            screen.Out.Write(page);
            return design.Exit(!proven.Plan.PutRightFirst.IsEmpty);
        }

        try
        {
            File.WriteAllText(settings.Out, page, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return screen.WrongUsage($"--out {settings.Out}: the file cannot be written there. {e.Message}");
        }

        screen.Line(FormattableString.Invariant($"{settings.Out}: {proven.Plan.Stages.Length} stages, {proven.Plan.Stages.Sum(s => s.Steps.Length)} steps. Send it to the phone and open it there; ticks stay on that phone."));
        return design.Exit(!proven.Plan.PutRightFirst.IsEmpty);
    }
}

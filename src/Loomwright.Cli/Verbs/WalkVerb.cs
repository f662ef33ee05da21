using System.ComponentModel;
using System.Diagnostics;
using Loomwright.Answers;
using Loomwright.Output;
using Loomwright.Quantities;
using Loomwright.Walk;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>walk FILE</c>: every position against what was promised.</summary>
public sealed class WalkVerb(Screen screen) : Command<WalkVerb.Settings>
{
    public const string Name = "walk";

    private static readonly TimeSpan BetweenTellings = TimeSpan.FromSeconds(1);

    /// <summary>How far to walk.</summary>
    public sealed class Settings : FileSettings
    {
        [CommandOption("--limit <STATES>")]
        [Description("Stop above this many states. Default 2000000")]
        public int? Limit { get; init; }

        [CommandOption("--time <TIME>")]
        [Description("Stop after this time, as 30s")]
        public string? Time { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<WalkVerb>(Name)
        .WithDescription("Every position of every control, compared with what the functions promise")
        .WithExample(Name, "my-bike.loom.yaml")
        .WithExample(Name, "my-bike.loom.yaml", "--time", "30s");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Limit < 1)
        {
            return screen.WrongUsage("--limit: write a number of states, 1 or more.");
        }

        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        if (settings.Time is not null)
        {
            if (Typed.Read(settings.Time, Unit.Second) is not Typed.Quantity { Si: > 0 and <= 86400 } time)
            {
                return screen.WrongUsage($"--time {settings.Time}: write a time with its unit, as 30s; at most 24 h.");
            }

            stop.CancelAfter(TimeSpan.FromSeconds(time.Si));
        }

        var design = OpenedDesign.OpenUnderstood(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        var options = new WalkOptions { Stop = stop.Token, Progress = Teller() };
        var walked = design.Bike.Walk(settings.Limit is { } most ? options with { MostStates = most } : options);
        if (settings.Json)
        {
            screen.Out.WriteLine(new WalkAnswer(design, walked).ToJson());
        }
        else
        {
            WalkView.Write(screen, walked);
        }

        return design.Exit(!walked.Complete || !walked.Surprises.IsEmpty);
    }

    // Nothing in the first second, then a line a second, and only where a person looks.
    private Action<WalkProgress>? Teller()
    {
        if (!screen.Tables.Profile.Out.IsTerminal)
        {
            return null;
        }

        var last = Stopwatch.StartNew();
        return progress =>
        {
            if (last.Elapsed >= BetweenTellings)
            {
                screen.Error.WriteLine(FormattableString.Invariant(
                    $"{progress.Depth} operations from rest: {progress.States} states, {progress.Waiting} to go on from, {progress.Surprises} surprises. Ctrl+C stops and tells what was found."));
                last.Restart();
            }
        };
    }
}

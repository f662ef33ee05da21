using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Answers;
using Loomwright.Faults;
using Loomwright.Output;
using Loomwright.Simulation;
using Loomwright.Text;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>try FILE --set … --do … --wait …</c>: operates the bike and tells what is then seen.</summary>
public sealed class TryVerb(Screen screen) : Command<TryVerb.Settings>
{
    public const string Name = "try";

    /// <summary>What it takes besides the file.</summary>
    public sealed class Settings : FileSettings
    {
        [CommandOption(Script.SetOption + " <CONTROL=POSITION>")]
        [Description("Leave a control in a position")]
        public string[] Set { get; init; } = [];

        [CommandOption(Script.DoOption + " <CONTROL>")]
        [Description("Press a control that springs back and let it go; CONTROL=POSITION leaves it there")]
        public string[] Do { get; init; } = [];

        [CommandOption(Script.WaitOption + " <TIME>")]
        [Description("Let time pass: 3s, 500ms, 2min. All three are played in the order typed")]
        public string[] Wait { get; init; } = [];

        [CommandOption("--fault <ID>")]
        [Description("Put one mistake in first, by its id from: list faults FILE")]
        public string? Fault { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<TryVerb>(Name)
        .WithDescription("Operate the bike: what lights, sounds, flashes or blows, with volts and amps")
        .WithExample(Name, "my-bike.loom.yaml", "--set", "\"lock=riding\"", "--do", "\"front brake=pressed\"", "--wait", "3s")
        .WithExample(Name, "my-bike.loom.yaml", "--set", "\"lock=riding\"", "--fault", "\"open: stop lamp feed\"");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var design = OpenedDesign.OpenUnderstood(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        var script = Script.Read(context.Arguments, design.Bike.Controls);
        if (script.Trouble is not null)
        {
            return screen.WrongUsage(script.Trouble);
        }

        Fault? fault = null;
        if (settings.Fault is not null)
        {
            var read = design.Bike.Fault(settings.Fault);
            if (read.Problem is { } problem)
            {
                return screen.WrongUsage($"--fault {settings.Fault}: {problem.What}; {problem.Cure}");
            }

            fault = read.Fault;
        }

        var frames = Play(design.Bike, fault, script, cancellationToken);
        if (settings.Json)
        {
            screen.Out.WriteLine(new TryAnswer(design, fault?.ToString(), frames, f => design.Bike.Harm(f, fault)).ToJson());
        }
        else
        {
            var healthy = fault is null ? frames : Play(design.Bike, null, script, cancellationToken);
            FramesView.Write(screen, design, fault, frames, healthy[^1]);
        }

        return design.Exit(frames.Any(f => Troubled(f) || !design.Bike.Harm(f, fault).IsEmpty));
    }

    private static ImmutableArray<Frame> Play(Bike bike, Fault? fault, Script script, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        return [.. bike.Start(fault).Play(script.Operations)];
    }

    // A fuse gone, an output tripped, or no settled answer is what a person would stop for.
    private static bool Troubled(Frame frame) =>
        frame.Outcome != Outcome.Settled
        || frame.Fuses.Any(f => f.State != FuseState.Whole)
        || frame.Controllers.Any(c => c.Outputs.Any(o => o.State == OutputState.Tripped));
}

using System.ComponentModel;
using System.Globalization;
using Loomwright.Answers;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Output;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>trouble FILE --saw …</c>: what may be wrong by what was seen, and what to look at next.</summary>
public sealed class TroubleVerb(Screen screen) : Command<TroubleVerb.Settings>
{
    public const string Name = "trouble";

    /// <summary>What was seen and measured.</summary>
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[FILE]")]
        [Description("The design, a file that ends in .loom.yaml; none with --case")]
        public string? File { get; init; }

        [CommandOption("--case <FOLDER>")]
        [Description("A told case, a folder with NAME.loom.yaml and NAME.case.yaml: the rank of its cause by what was told, then after the search's own questions, answered by simulating it")]
        public string? Case { get; init; }

        [CommandOption("--json")]
        [Description("Answer for a machine to read")]
        public bool Json { get; init; }

        [CommandOption("--saw <DONE: SEEN>")]
        [Description("What was done and what was seen then; repeat for each")]
        public string[] Saw { get; init; } = [];

        [CommandOption("--read <DONE: POINT to POINT = VOLTS>")]
        [Description("What was done and what the meter showed then; repeat for each")]
        public string[] Read { get; init; } = [];

        [CommandOption("--found <CHECK: FOUND>")]
        [Description("What a look at a thing itself found, key off; repeat for each")]
        public string[] Found { get; init; } = [];

        [CommandOption("--session <SESSION>")]
        [Description("Answers from a file, one a line, in order; before those above")]
        public string? Session { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<TroubleVerb>(Name)
        .WithDescription("What may be wrong by what was seen and measured, why, and what to look at next")
        .WithExample(Name, "my-bike.loom.yaml", "--saw", "\"lock=riding, front brake=pressed: rear cluster stop=dark\"")
        .WithExample(Name, "my-bike.loom.yaml", "--read", "\"lock=riding: box.X4 to battery.- = 12.4 V\"")
        .WithExample(Name, "--case", "tests/published/cases/14");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Case is { } folder)
        {
            return settings.File is null ? CaseFolder.Answer(folder, settings.Json, screen) : screen.WrongUsage("--case has its own design; leave FILE out.");
        }

        if (settings.File is null)
        {
            return screen.WrongUsage("Name a design, a file that ends in .loom.yaml, or a case with --case FOLDER.");
        }

        var design = OpenedDesign.OpenUnderstood(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        var session = SessionLines.Read(settings.Session, design.Bike);
        if (session.Trouble is { } unreadable)
        {
            screen.Error.WriteLine($"{settings.Session}:{unreadable}");
            return ExitCode.Unreadable;
        }

        var told = session.Lines.ToList();
        foreach (var (option, text, (read, problem)) in settings.Saw.Select(s => ("--saw", s, design.Bike.Saw(s)))
            .Concat(settings.Read.Select(r => ("--read", r, design.Bike.Read(r)))).Concat(settings.Found.Select(f => ("--found", f, design.Bike.Found(f)))))
        {
            if (problem is not null)
            {
                return screen.WrongUsage($"{option} {text}: {problem.Path}: {problem.What}; {problem.Cure}");
            }

            told.Add(new SessionLine.Answer(read!));
        }

        var table = design.Bike.Trouble(told.OfType<SessionLine.Answer>().Select(a => a.Report.Done).OfType<Stimulus>(), cancellationToken);
        var trouble = Trouble.Begin(table);
        foreach (var line in told)
        {
            if (line is SessionLine.Mended mended)
            {
                if (trouble.Suspects.FirstOrDefault(s => Text.Names.Same(s.Repair, mended.Repair)) is not { } suspect)
                {
                    screen.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{settings.Session}:{mended.Line}:1: {Choosing.None("repair", mended.Repair, [.. trouble.Suspects.Select(s => s.Repair)])}"));
                    return ExitCode.Unreadable;
                }

                trouble = trouble.Mended(suspect);
            }
            else if (line is SessionLine.Answer answer)
            {
                trouble = trouble.After(answer.Report.In(table));
            }
        }

        if (settings.Json)
        {
            screen.Out.WriteLine(TroubleAnswer.Of(design, table, trouble).ToJson());
        }
        else
        {
            TroubleView.Write(screen, table, trouble);
        }

        return design.Exit(trouble.State == Search.DoesNotFit);
    }
}

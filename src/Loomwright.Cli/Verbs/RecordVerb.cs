using Loomwright.Answers;
using Loomwright.Output;
using Loomwright.Records;
using Loomwright.Sessions;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>record FILE</c>: what was checked at the bench and on the bike, and what was not.</summary>
public sealed class RecordVerb(Screen screen) : Command<FileSettings>
{
    public const string Name = "record";

    public static void AddTo(IConfigurator config) => config.AddCommand<RecordVerb>(Name)
        .WithDescription("What was checked in the sessions at the bench and on the bike, by whom, with what outcome; and what was not")
        .WithExample(Name, "my-bike.loom.yaml");

    public override int Execute(CommandContext context, FileSettings settings, CancellationToken cancellationToken)
    {
        var design = OpenedDesign.Open(settings.File, screen);
        if (design is null)
        {
            return ExitCode.Unreadable;
        }

        try
        {
            var (records, searches) = (TestRecord.Kept(settings.File), SearchRecord.Kept(settings.File));
            if (settings.Json)
            {
                screen.Out.WriteLine(new RecordAnswer(design, records, searches).ToJson());
            }
            else
            {
                RecordView.Write(screen, records, searches, design.Stored.Sha256);
            }

            return design.Exit(records.Any(r => r.Lines.Concat(r.ReadAlone).Any(l => l.Answer.Verdict == Verdict.Not)));
        }
        catch (RecordsException e)
        {
            screen.Error.WriteLine($"{settings.File}:1:1: {e.Message}");
            return ExitCode.Unreadable;
        }
    }
}

using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Answers;
using Loomwright.Contacts;
using Loomwright.Output;
using Loomwright.Text;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary><c>contacts</c>: an unmarked switch, or a lamp's leads, worked out with a meter.</summary>
public sealed class ContactsVerb(Screen screen) : Command<ContactsVerb.Settings>
{
    public const string Name = "contacts";

    /// <summary>What there is to touch, and what was read so far.</summary>
    public sealed class Settings : CommandSettings
    {
        [CommandOption("--leads <NAMES>")]
        [Description("What you call the leads, a comma between: \"red, brown, black\"")]
        public string? Leads { get; init; }

        [CommandOption("--positions <NAMES>")]
        [Description("The positions in the order of turning: \"off, on, lights\"")]
        public string? Positions { get; init; }

        [CommandOption("--lamp")]
        [Description("The leads are a lamp's, which has no positions")]
        public bool Lamp { get; init; }

        [CommandOption("--clips")]
        [Description("The meter has clips: they stay on a pair while the switch is turned through its positions")]
        public bool Clips { get; init; }

        [CommandOption("--readings <FILE>")]
        [Description("What the meter said so far, a reading a line")]
        public string? Readings { get; init; }

        [CommandOption("--json")]
        [Description("Answer for a machine to read")]
        public bool Json { get; init; }
    }

    public static void AddTo(IConfigurator config) => config.AddCommand<ContactsVerb>(Name)
        .WithDescription("Work out an unmarked switch or a lamp's leads with a meter: the next pair to touch, then the table")
        .WithExample(Name, "--leads", "red, brown, black", "--positions", "off, on, lights")
        .WithExample(Name, "--leads", "red, brown, black", "--positions", "off, on, lights", "--readings", "lock.jsonl");

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var (leads, positions) = (Listed(settings.Leads), Listed(settings.Positions));
        var most = settings.Lamp ? LampLeads.MostLeads : UnmarkedSwitch.MostLeads;
        if (Unusable("--leads", leads, most) is { } wrongLeads)
        {
            return screen.WrongUsage(wrongLeads);
        }

        var wrongPositions = !settings.Lamp ? Unusable("--positions", positions, UnmarkedSwitch.MostPositions)
            : positions.IsEmpty ? null : "--positions: a lamp has none; leave it out.";
        if (wrongPositions is not null)
        {
            return screen.WrongUsage(wrongPositions);
        }

        if (Lines(settings.Readings) is not { } lines)
        {
            return ExitCode.Unreadable;
        }

        var reader = new ReadingLines(leads, positions);
        return settings.Lamp ? OfLamp(settings, leads, reader.OfLamp(lines), reader) : OfSwitch(settings, leads, positions, reader.OfSwitch(lines), reader);
    }

    private int OfSwitch(Settings settings, ImmutableArray<string> leads, ImmutableArray<string> positions, ImmutableArray<Reading> readings, ReadingLines reader)
    {
        if (Told(settings, reader))
        {
            return ExitCode.Unreadable;
        }

        var read = UnmarkedSwitch.Of(leads, positions, readings, settings.Clips);
        if (settings.Json)
        {
            screen.Out.WriteLine(ContactsAnswer.Of(read).ToJson());
        }
        else
        {
            ContactsView.Write(screen, read);
        }

        return read.State == Known.DoesNotFit ? ExitCode.Look : ExitCode.Answered;
    }

    private int OfLamp(Settings settings, ImmutableArray<string> leads, ImmutableArray<LampReading> readings, ReadingLines reader)
    {
        if (Told(settings, reader))
        {
            return ExitCode.Unreadable;
        }

        var read = LampLeads.Of(leads, readings);
        if (settings.Json)
        {
            screen.Out.WriteLine(ContactsAnswer.Of(read, leads).ToJson());
        }
        else
        {
            ContactsView.Write(screen, read, leads);
        }

        return ExitCode.Answered;
    }

    private bool Told(Settings settings, ReadingLines reader)
    {
        if (reader.Trouble is { } trouble)
        {
            screen.Error.WriteLine($"{settings.Readings}:{trouble}");
        }

        return reader.Trouble is not null;
    }

    private string[]? Lines(string? path)
    {
        try
        {
            return path is null ? [] : File.ReadAllLines(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            screen.Error.WriteLine($"{path}:1:1: it cannot be opened: {e.Message}");
            return null;
        }
    }

    private static ImmutableArray<string> Listed(string? names) =>
        [.. (names ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    private static string? Unusable(string option, ImmutableArray<string> names, int most) =>
        names.Length < 2 || names.Length > most ? FormattableString.Invariant($"{option}: name 2 to {most}, a comma between; {names.Length} are named.")
        : names.Distinct(Names.Comparer).Count() < names.Length ? $"{option}: two have the same name; give each its own."
        : null;
}

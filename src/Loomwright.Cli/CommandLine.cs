using System.Reflection;
using Loomwright.Output;
using Loomwright.Verbs;
using Spectre.Console.Cli;

namespace Loomwright;

/// <summary>The verbs, and what becomes of a call that goes wrong.</summary>
public static class CommandLine
{
    /// <summary>Runs one call to its exit code. Never throws: a fault of our own is told in a sentence, with its stack when <c>LOOMWRIGHT_DEBUG=1</c> asks for it.</summary>
    public static async Task<int> Run(string[] args, Screen screen, CancellationToken stop)
    {
        try
        {
            var words = WithVerb(args);
            if ((UnknownVerb(words) ?? MissingValue(words)) is { } message)
            {
                return screen.WrongUsage(message);
            }

            // A long answer is left where it is when it is no longer wanted; a page is closed in order, a walk tells how far it came.
            var answer = Task.Run(() => App(screen).RunAsync(words, stop), stop);
            return await (words[0] is ServeVerb.Name or WalkVerb.Name ? answer : answer.WaitAsync(stop));
        }
        catch (CommandAppException e)
        {
            return screen.WrongUsage($"{e.Message} See: loomwright --help");
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            await screen.Error.WriteLineAsync("stopped");
            return ExitCode.Stopped;
        }
        catch (Exception e)
        {
            await screen.Error.WriteLineAsync(
                $"This is a fault in loomwright, not in your file ({e.GetType().Name}: {e.Message}). "
                + "Report it where you got the program, with the design file and the command you typed.");
            if (Environment.GetEnvironmentVariable("LOOMWRIGHT_DEBUG") == "1")
            {
                await screen.Error.WriteLineAsync(e.ToString());
            }

            return ExitCode.OwnFault;
        }
    }

    /// <summary>Name and version, as answers carry them.</summary>
    public static string Tool { get; } = "loomwright " + typeof(CommandLine).Assembly.GetName().Version!.ToString(3);

    private static readonly string[] Verbs = [CheckVerb.Name, TryVerb.Name, ListVerb.Name, PlanVerb.Name, PrintVerb.Name, WalkVerb.Name, SizeVerb.Name, DrawVerb.Name, ContactsVerb.Name, TroubleVerb.Name, RecordVerb.Name, ExplainVerb.Name, ServeVerb.Name];

    private static CommandApp App(Screen screen)
    {
        var app = new CommandApp();
        app.Configure(config =>
        {
            config.SetApplicationName("loomwright");
            config.SetApplicationVersion(Tool);
            config.SetApplicationCulture(System.Globalization.CultureInfo.InvariantCulture);
            config.ConfigureConsole(screen.Tables);
            config.UseStrictParsing();
            config.PropagateExceptions();
            config.Settings.Registrar.RegisterInstance(screen);
            CheckVerb.AddTo(config);
            TryVerb.AddTo(config);
            ListVerb.AddTo(config);
            PlanVerb.AddTo(config);
            PrintVerb.AddTo(config);
            WalkVerb.AddTo(config);
            SizeVerb.AddTo(config);
            DrawVerb.AddTo(config);
            ContactsVerb.AddTo(config);
            TroubleVerb.AddTo(config);
            RecordVerb.AddTo(config);
            ExplainVerb.AddTo(config);
            ServeVerb.AddTo(config);
        });
        return app;
    }

    /// <summary>Without a verb the workspace is opened.</summary>
    private static string[] WithVerb(string[] args) =>
        args.Length == 0 || (args[0].StartsWith('-') && args[0] is not ("-h" or "--help" or "-v" or "--version"))
            ? [ServeVerb.Name, .. args]
            : args;

    // The parser takes an option whose value was forgotten for one that was not given.
    private static string? MissingValue(string[] words)
    {
        for (var i = 0; i < words.Length; i++)
        {
            if (words[i] == "--")
            {
                return "Nothing is taken after --.";
            }

            if (OptionsWithValue.Contains(words[i]) && (i + 1 == words.Length || words[i + 1].StartsWith("--", StringComparison.Ordinal)))
            {
                return $"{words[i]} needs a value after it. See: loomwright {words[0]} --help";
            }
        }

        return null;
    }

    private static readonly HashSet<string> OptionsWithValue =
    [
        .. new[] { typeof(CheckVerb.Settings), typeof(TryVerb.Settings), typeof(PlanVerb.Settings), typeof(PrintVerb.Settings), typeof(WalkVerb.Settings), typeof(SizeVerb.Settings), typeof(DrawVerb.Settings), typeof(ContactsVerb.Settings), typeof(TroubleVerb.Settings), typeof(ServeVerb.Settings) }
            .SelectMany(settings => settings.GetProperties())
            .SelectMany(property => property.GetCustomAttributes<CommandOptionAttribute>())
            .Where(option => option.ValueName is not null)
            .SelectMany(option => option.LongNames.Select(name => $"--{name}")),
    ];

    private static string? UnknownVerb(string[] words) =>
        words[0].StartsWith('-') || Verbs.Contains(words[0]) ? null : Choosing.None("verb", words[0], Verbs);
}

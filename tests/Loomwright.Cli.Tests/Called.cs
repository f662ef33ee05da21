using System.Collections.Concurrent;
using Loomwright.Output;

namespace Loomwright.Tests;

/// <summary>One call of the program inside the test, from the top of the checkout, its answer as another program would get it.</summary>
public sealed record Called(int Exit, string Out, string Error)
{
    public const string Bench = "examples/kittiwake-bench/kittiwake-bench.loom.yaml";

    /// <summary>Every broken variant of the gallery, as typed on a command line.</summary>
    public static IEnumerable<string> Gallery { get; } = Directory
        .EnumerateFiles(Path.Combine(Repository.Root, "examples/gallery"), "*.loom.yaml", SearchOption.TopDirectoryOnly)
        .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
        .Order(StringComparer.Ordinal);

    /// <summary>What a golden about a design is called.</summary>
    public static string NameOf(string file) => Path.GetFileName(file)[..^".loom.yaml".Length];

    private static readonly ConcurrentDictionary<string, Lazy<Called>> Answers = new(StringComparer.Ordinal);

    /// <summary>The same, called once for all tests that ask it: only for what writes nothing and reads nothing but the checkout.</summary>
    public static Called Once(params string[] args) => Answers.GetOrAdd(string.Join('\0', args), _ => new(() => With(args))).Value;

    public static Called With(params string[] args) => With(CancellationToken.None, args);

    public static Called With(CancellationToken stop, params string[] args)
    {
        Environment.CurrentDirectory = Repository.Root;
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var exit = CommandLine.Run(args, Screen.On(output, error, piped: true), stop).GetAwaiter().GetResult();
        return new(exit, Trimmed(output), Trimmed(error));
    }

    /// <summary>The answer and the exit code as one text, for a golden.</summary>
    public string Golden => $"{Out}{(Error.Length > 0 ? $"--- error\n{Error}" : "")}--- exit {Exit.ToString(System.Globalization.CultureInfo.InvariantCulture)}\n";

    // Tables are padded to their width; a golden with blanks at its line ends would be hard to keep.
    private static string Trimmed(StringWriter text) =>
        string.Join('\n', text.ToString().ReplaceLineEndings("\n").Split('\n').Select(l => l.TrimEnd()));
}

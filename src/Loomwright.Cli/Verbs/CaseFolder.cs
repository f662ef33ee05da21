using Loomwright.Answers;
using Loomwright.Findings;
using Loomwright.OnDisk;
using Loomwright.Output;

namespace Loomwright.Verbs;

/// <summary>A told case as a folder: NAME.loom.yaml, the healthy circuit, and NAME.case.yaml.</summary>
internal static class CaseFolder
{
    private const string Ending = ".case.yaml";

    /// <summary>Puts it to the search and says where its cause stands.</summary>
    public static int Answer(string folder, bool json, Screen screen)
    {
        if (!Directory.Exists(folder) || Directory.GetFiles(folder, "*" + Ending) is not [var path])
        {
            screen.Error.WriteLine($"{folder}: it is no folder with one file in it that ends in {Ending}.");
            return ExitCode.Unreadable;
        }

        var stored = StoredDesign.Read(path);
        if (stored.Text is null)
        {
            screen.Error.WriteLine($"{path}:1:1: {stored.Trouble}");
            return ExitCode.Unreadable;
        }

        if (OpenedDesign.OpenUnderstood(path[..^Ending.Length] + StoredDesign.Ending, screen) is not { } design)
        {
            return ExitCode.Unreadable;
        }

        var (search, findings) = design.Bike.Case(stored.Text);
        foreach (var finding in findings.Where(f => f.Severity == Severity.Stop))
        {
            screen.Error.WriteLine($"{path}:{stored.Text.At((finding.Where as Subject.Stretch)?.Span.Start ?? 0)}: {finding.What} {finding.Do}");
        }

        // It stands where its words first do.
        foreach (var problem in search?.Problems ?? [])
        {
            screen.Error.WriteLine($"{path}:{stored.Text.At(Math.Max(0, stored.Text.Content.IndexOf(problem.Path, StringComparison.Ordinal)))}: {problem.Path}: {problem.What}; {problem.Cure}");
        }

        if (search is null or { Stages.IsEmpty: true })
        {
            return ExitCode.Unreadable;
        }

        if (json)
        {
            screen.Out.WriteLine(CaseAnswer.Of(design, search).ToJson());
        }
        else
        {
            CaseView.Write(screen, search);
        }

        return design.Exit(look: false);
    }
}

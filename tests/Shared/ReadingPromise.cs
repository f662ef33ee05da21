using Loomwright.Findings;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests;

/// <summary>What reading any text at all must keep: no exception, an end in good time, and either a loom or a finding that stops and says where.</summary>
public static class ReadingPromise
{
    /// <summary>Why the promise is broken, or null.</summary>
    public static string? BrokenBy(string content, TimeSpan patience)
    {
        string? broken = "it did not come to an end";
        var reader = new Thread(() => broken = Look(content)) { IsBackground = true };
        reader.Start();
        return reader.Join(patience) ? broken : "it did not come to an end";
    }

    private static string? Look(string content)
    {
        try
        {
            var file = DesignFile.Read(new SourceText("mutant.loom.yaml", content));
            if (file.Loom is null && file.Findings.All(f => f.Severity != Severity.Stop))
            {
                return "neither a loom nor a finding that stops";
            }

            foreach (var finding in file.Findings)
            {
                var span = ((Subject.Stretch)finding.Where).Span;
                if (span.Start < 0 || span.Length < 0 || span.End > content.Length)
                {
                    return $"{finding.Code} points outside the file";
                }

                if (finding.What.Length == 0 || finding.Why.Length == 0 || finding.Do.Length == 0)
                {
                    return $"{finding.Code} does not say what, why and what to do";
                }
            }

            return null;
        }
#pragma warning disable CA1031 // Any exception at all breaks the promise.
        catch (Exception thrown)
#pragma warning restore CA1031
        {
            return thrown.ToString();
        }
    }
}

using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.OnDisk;
using Loomwright.Output;
using Loomwright.Text;

namespace Loomwright.Verbs;

/// <summary>A design file read for one answer.</summary>
public sealed record OpenedDesign(StoredDesign Stored, SourceText Text, Bike Bike)
{
    /// <summary>Reads the file; when there is no text to answer from says why and gives null.</summary>
    public static OpenedDesign? Open(string path, Screen screen)
    {
        var stored = StoredDesign.Read(path);
        if (stored.Text is null)
        {
            screen.Error.WriteLine($"{path}:1:1: {stored.Trouble}");
            return null;
        }

        return new OpenedDesign(stored, stored.Text, Bike.Read(stored.Text));
    }

    /// <summary>As <see cref="Open"/>, and gives null too when nothing of the design could be understood.</summary>
    public static OpenedDesign? OpenUnderstood(string path, Screen screen)
    {
        var design = Open(path, screen);
        if (design is null)
        {
            return null;
        }

        foreach (var finding in design.Bike.ReadingFindings.Where(f => f.Severity == Severity.Stop))
        {
            screen.Error.WriteLine($"{design.Stored.Path}:{design.Place(finding.Where).Start}: {finding.What} {finding.Do}");
        }

        return design.Bike.Loom is null ? null : design;
    }

    /// <summary>The terminal that is 0 V.</summary>
    public string? Reference => Bike.Loom?.Parts
        .Select(p => Bike.Model(p).Supply is { } supply ? new TerminalRef(p.Name, supply.Minus).ToString() : null)
        .FirstOrDefault(t => t is not null);

    /// <summary>How an answer from this design ends: a part of it that could not be read is something to look at too.</summary>
    public int Exit(bool look) => look || !Bike.IsComplete ? ExitCode.Look : ExitCode.Answered;

    /// <summary>Where a subject stands in the file; the end is just past its last character.</summary>
    public (LineColumn Start, LineColumn End) Place(Subject subject)
    {
        var span = Bike.Place(subject);
        return (Text.At(span.Start), Text.At(span.End));
    }
}

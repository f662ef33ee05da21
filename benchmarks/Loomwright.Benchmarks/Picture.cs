using System.Diagnostics;
using System.Runtime.CompilerServices;
using Loomwright.Drawing;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Benchmarks;

/// <summary>
/// Laying every wire of an overview whose boxes have their places, and the same with one wire more that finds its own way,
/// beside writing the sheet as SVG in the same run.
/// </summary>
internal static class Picture
{
    private const int Runs = 31;
    private const int Trials = 20;

    public static void Print()
    {
        Console.WriteLine();
        Console.WriteLine("the picture, milliseconds: all wires laid from kept places, first and warm; one wire more; the sheet written");
        Console.WriteLine($"{"",-20} {"wires",6} {"first",8} {"warm",8} {"one more",9} {"written",8} {"warm/written",13} {"first/warm",11}");
        foreach (var name in new[] { "kittiwake-bench", "sandpiper", "kittiwake", "turnstone" })
        {
            var loom = Read(name);
            loom = loom.Placing.Arranged is null ? loom with { Placing = Sheets.Arrange(loom, Trials) } : loom;
            var more = loom with { Wires = loom.Wires.Add(loom.Wires[0] with { Name = "one more" }) };
            var (first, _) = Timed(() => Sheets.Overview(loom));
            var (warm, scene) = Median(() => Sheets.Overview(loom));
            var (one, _) = Median(() => Sheets.Overview(more));
            var (written, _) = Median(() => Svg.Write(scene));
            Console.WriteLine(FormattableString.Invariant(
                $"{name,-20} {scene.Strands.Length,6} {first,8:F1} {warm,8:F1} {one - warm,9:F1} {written,8:F1} {warm / written,13:F2} {first / warm,11:F1}"));
        }
    }

    private static Design.Loom Read(string name)
    {
        var text = File.ReadAllText(Path.Combine(Path.GetDirectoryName(ThisFile())!, "..", "..", "examples", name, name + ".loom.yaml"));
        return DesignFile.Read(new SourceText(name, text)).Loom ?? throw new InvalidDataException(name + " cannot be read");
    }

    private static (double Milliseconds, T Made) Median<T>(Func<T> make)
    {
        var runs = Enumerable.Range(0, Runs).Select(_ => Timed(make)).OrderBy(r => r.Milliseconds).ToList();
        return runs[Runs / 2];
    }

    private static (double Milliseconds, T Made) Timed<T>(Func<T> make)
    {
        var start = Stopwatch.GetTimestamp();
        var made = make();
        return (Stopwatch.GetElapsedTime(start).TotalMilliseconds, made);
    }

    private static string ThisFile([CallerFilePath] string path = "") => path;
}

using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Faults;
using Loomwright.Findings;
using Loomwright.Simulation;
using Loomwright.Verbs;
using Spectre.Console;

namespace Loomwright.Output;

/// <summary>A played script for a person: what changes at each step, then how everything stands at the end.</summary>
internal static class FramesView
{
    private const string Changed = "◆";

    // Below a milliamp a wire only leaks; the table is of what carries something.
    private const double CarriesAmps = 1e-3;

    public static void Write(Screen screen, OpenedDesign design, Fault? fault, ImmutableArray<Frame> frames, Frame healthy)
    {
        screen.Line($"{design.Bike.Loom!.Name}: computed from the file; your bike was not measured.");
        if (fault is not null)
        {
            screen.Line($"{Changed} One mistake put in: {fault}. What lights, sounds or switches otherwise than without it carries {Changed}.");
            foreach (var finding in design.Bike.Check(fault))
            {
                screen.Line($"{FindingsView.Sign(finding.Severity)} {finding.Code}: {finding.What}");
            }
        }

        screen.Line();
        Steps(screen, frames, f => design.Bike.Harm(f, fault));
        var last = frames[^1];
        screen.Line("At the end");
        Loads(screen, last, healthy);
        Fuses(screen, last, healthy);
        Boxes(screen, last, healthy);
        Wires(screen, last);
    }

    private static void Steps(Screen screen, ImmutableArray<Frame> frames, Func<Frame, ImmutableArray<string>> harm)
    {
        var table = Columns.Under("time", "step", "what changes", "supply gives");
        Frame? before = null;
        foreach (var frame in frames)
        {
            table.AddRow(Cell(Seconds(frame.Time)), Cell(frame.Step), Cell(Told(before, frame, harm(frame))), Cell(frame.Phases.IsEmpty ? "" : frame.Phases[0].Supply));
            before = frame;
        }

        screen.Show(table);
    }

    private static string Told(Frame? before, Frame now, ImmutableArray<string> harm)
    {
        string?[] told = [.. harm.Select(h => $"{FindingsView.Sign(Severity.Stop)} {h}"), .. now.Events, .. Fact.Changes(before, now), Says.Word(now.Outcome)];
        var lines = told.OfType<string>().ToList();
        return lines.Count > 0 ? string.Join("\n", lines) : before is null ? "nothing is on" : "nothing";
    }

    private static void Loads(Screen screen, Frame now, Frame healthy)
    {
        var table = Columns.Under("lamp or horn", "is", "volts", "amps", "light");
        foreach (var (seen, well) in Pairs(now.Seen, healthy.Seen, s => s.Name))
        {
            var light = seen.LightShare is { } share ? string.Create(CultureInfo.InvariantCulture, $"{share * 100:0} %") : "";
            table.AddRow(Cell(Words.Name(seen.Name)), Compared(Words.Of(seen.Symbol), Words.Of(well.Symbol)), Cell(seen.Voltage), Cell(seen.Current), Cell(light));
        }

        screen.Show(table);
    }

    private static void Fuses(Screen screen, Frame now, Frame healthy)
    {
        var table = Columns.Under("fuse", "is", "carries", "rating");
        foreach (var (fuse, well) in Pairs(now.Fuses, healthy.Fuses, f => f.Part))
        {
            table.AddRow(Cell(fuse.Part), Compared(Words.Of(fuse.State), Words.Of(well.State)), Cell(fuse.Current), Cell(fuse.Rating.Printed));
        }

        screen.Show(table);
    }

    private static void Boxes(Screen screen, Frame now, Frame healthy)
    {
        foreach (var (box, well) in Pairs(now.Controllers, healthy.Controllers, c => c.Part))
        {
            var table = Columns.Under($"{box.Part}, {Beside(Says.Awake(box.Awake), Says.Awake(well.Awake))}", "is", "carries", "light");
            var lights = Pairs(box.Lights, well.Lights, l => l.Terminal)
                .ToDictionary(p => p.Now.Terminal, p => Compared(Words.OfLight(p.Now.Symbol), Words.OfLight(p.Healthy.Symbol)), StringComparer.Ordinal);
            foreach (var (input, other) in Pairs(box.Inputs, well.Inputs, i => i.Name))
            {
                Row(input.Terminal, input.Name, Compared(Says.Input(input.Active), Says.Input(other.Active)), "");
            }

            foreach (var (output, other) in Pairs(box.Outputs, well.Outputs, o => o.Name))
            {
                Row(output.Terminal, output.Name, Compared(Words.Of(output.State), Words.Of(other.State)), output.Current.ToString());
            }

            screen.Show(table);

            void Row(string mark, string name, Markup state, string carries) =>
                table.AddRow(Cell($"{mark}  {name}"), state, Cell(carries), lights.GetValueOrDefault(mark, Cell("")));
        }
    }

    private static void Wires(Screen screen, Frame now)
    {
        foreach (var (phase, index) in now.Phases.Select((p, i) => (p, i)))
        {
            var flash = now.Phases.Length == 1 ? "" : index == 0 ? ", flash on" : ", flash off";
            var table = Columns.Under($"wire that carries something{flash}", "amps", "drop");
            foreach (var wire in phase.Wires.Where(w => Math.Abs(w.Current.Amps) >= CarriesAmps))
            {
                table.AddRow(Cell(wire.Wire), Cell(wire.Current), Cell(wire.Drop));
            }

            screen.Show(table);
        }
    }

    private static IEnumerable<(T Now, T Healthy)> Pairs<T>(ImmutableArray<T> now, ImmutableArray<T> healthy, Func<T, string> name) =>
        now.Join(healthy, name, name, (n, h) => (n, h), StringComparer.Ordinal);

    private static Markup Compared(string now, string healthy) =>
        now == healthy ? Cell(now) : new Markup($"[bold magenta]{Markup.Escape(Beside(now, healthy))}[/]");

    private static string Beside(string now, string healthy) => now == healthy ? now : $"{Changed} {now}, without it {healthy}";

    private static Markup Cell(object value) => new(Markup.Escape(value.ToString() ?? ""));

    private static string Seconds(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.00} s");
}

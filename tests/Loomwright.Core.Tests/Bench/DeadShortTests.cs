using Loomwright.Bench;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Tests.Bench;

/// <summary>Before power: wherever loads alone join a point to the battery's ground side, a reading of no ohms is outside some band there.</summary>
public sealed class DeadShortTests
{
    // Wires and contacts stay below, the loads of a bike above.
    private const double JoinedOhms = 0.3;

    public static TheoryData<string> Looms =>
    [
        "kittiwake bench", "kittiwake", "sandpiper", "relays", "starting", "starting on positive ground",
        "two resistors of 8 ohm", "two resistors of 2 ohm", "a resistor of 2 ohm before a coil", "resistors that together read as low as a joint",
    ];

    [Theory]
    [MemberData(nameof(Looms))]
    public void On_the_bench_no_dead_short_across_the_supply_reads_inside_every_band(string name) => Reads(Plans.OnTheBench(Of(name)));

    [Theory]
    [MemberData(nameof(Looms))]
    public void On_the_bike_no_dead_short_across_the_supply_reads_inside_every_band(string name) => Reads(Plans.OnTheBike(Of(name)));

    [Fact]
    public void Two_resistors_on_two_outputs_of_the_lock_read_what_they_have_together() =>
        Assert.Contains(Plans.OnTheBike(Of("two resistors of 8 ohm")).Stages.SelectMany(s => s.Steps), s => s.Act == Act.Measure && s.Expect.Any(e => e.Band is { Computed: > 3.9 and < 4.2, Least: > 2 }));

    private static void Reads(Plan plan)
    {
        Assert.NotEmpty(plan.Stages);
        foreach (var stage in plan.Stages)
        {
            var paths = new Paths(stage.Connected);
            var empty = new Rig(Unplugged.Of(stage.Connected, paths, [.. stage.Connected.Parts.Where(p => p.Kind == "resistor" || !paths.Models[p.Name].Sights.IsEmpty).Select(p => p.Name)]));
            var readings = new List<(string Where, bool IsJoined, Step Step)>();
            foreach (var step in stage.Steps.Where(s => s.Act == Act.Measure))
            {
                _ = step.Do is { } set ? empty.Do(set) : empty.Now;
                if (step.Meter is { } meter && new[] { meter.RedTip.Terminal, meter.BlackTip.Terminal }.Contains(paths.Return))
                {
                    var at = empty.Now.Controls.Where(c => !c.AtRest).Select(c => $"{c.Control} {c.Position}");
                    readings.Add(($"{meter.RedTip.Terminal} {meter.BlackTip.Terminal} {string.Join(' ', at)}", empty.Ohms(meter.RedTip.Terminal, meter.BlackTip.Terminal) is { Ohms: < JoinedOhms }, step));
                }
            }

            Assert.All(readings.Where(r => !r.IsJoined), r => Assert.True(
                readings.Any(x => x.Where == r.Where && x.Step.Expect[0].Band!.Least > 0) || plan.OpenPoints.Any(p => p.StartsWith(r.Step.Id + ":", StringComparison.Ordinal)), $"{r.Step.Id} {r.Step.Text} {r.Step.Expect[0].Shows}"));
        }
    }

    private static Loom Of(string name) => name switch
    {
        "kittiwake bench" => Examples.Kittiwake,
        "kittiwake" or "sandpiper" => Plans.Bike(name),
        "relays" => Relays.Lamp,
        "starting" => Starting.Bike,
        "starting on positive ground" => Starting.PositiveGround,
        "two resistors of 8 ohm" => Resistors("8"),
        "two resistors of 2 ohm" => Resistors("2"),
        "a resistor of 2 ohm before a coil" => Ballast,
        _ => Many,
    };

    private static Loom Behind(string parts, string wires, string amps = "15", string size = "1") => Examples.Of(Relays.Head.Replace("[r, s]\n", "[r, s, t, u]\n", StringComparison.Ordinal).Replace("rating: 15 A", $"rating: {amps} A", StringComparison.Ordinal).Replace("riding: [[r, s]]", "riding: [[r, s], [r, t], [r, u]]", StringComparison.Ordinal) + $$"""
          tail lamp: {kind: lamp, filament: 5 W}
        {{parts}}
        wires:
          - {from: battery.+, to: main fuse.1, size: {{size}} mm2, length: 0.1 m}
          - {from: main fuse.2, to: lock.r, size: {{size}} mm2, length: 0.5 m}
          - {from: lock.s, to: tail lamp.+, size: {{size}} mm2, length: 0.5 m}
          - {from: tail lamp.-, to: battery.-, size: {{size}} mm2, length: 0.5 m}
        {{wires}}
        """);

    private static Loom Resistors(string ohms) => Behind(
        $"  one: {{kind: resistor, resistance: {ohms} ohm}}\n  two: {{kind: resistor, resistance: {ohms} ohm}}",
        """
          - {from: lock.u, to: one.1, size: 1 mm2, length: 0.5 m}
          - {from: one.2, to: battery.-, size: 1 mm2, length: 0.5 m}
          - {from: lock.t, to: two.1, size: 1 mm2, length: 0.5 m}
          - {from: two.2, to: battery.-, size: 1 mm2, length: 0.5 m}
        """);

    private static Loom Ballast { get; } = Behind(
        "  ballast: {kind: resistor, resistance: 2 ohm}\n  coil: {kind: ignition coil}",
        """
          - {from: lock.t, to: ballast.1, size: 1 mm2, length: 0.5 m}
          - {from: ballast.2, to: coil.15, size: 1 mm2, length: 0.5 m}
          - {from: coil.1, to: battery.-, size: 1 mm2, length: 0.5 m}
        """);

    // Of 6 ohm each, none of them low by itself.
    private static Loom Many { get; } = Behind(
        string.Join('\n', Enumerable.Range(0, 24).Select(n => FormattableString.Invariant($"  r{n}: {{kind: resistor, resistance: 6 ohm}}"))),
        string.Join('\n', Enumerable.Range(0, 24).Select(n => FormattableString.Invariant($"  - {{from: lock.t, to: r{n}.1, size: 16 mm2, length: 0.5 m}}\n  - {{from: r{n}.2, to: battery.-, size: 16 mm2, length: 0.5 m}}"))), amps: "80", size: "16");
}

using Loomwright.Design;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Simulation;

namespace Loomwright.Tests.Dictionary;

public sealed class DictionaryTests
{
    // A common meter's last place on its 20 V range, and on its 10 A range.
    private const double MeterVolts = 0.01;
    private const double MeterAmps = 0.01;

    private static readonly Loom Kittiwake = Examples.Read("examples/kittiwake/kittiwake.loom.yaml");
    private static readonly Lazy<FaultTable> Made = new(() => FaultTable.Of(Kittiwake, new DictionaryOptions { Stimuli = [.. Stimuli.Usual(Kittiwake).Where((_, s) => s % 15 == 4)] }));

    [Fact]
    public void The_whole_example_has_at_least_eight_single_faults_a_wire() =>
        Assert.True(Catalogue.Of(Kittiwake).Length >= 8 * Kittiwake.Wires.Length);

    [Fact]
    public void Every_listed_fault_stands_in_one_entry_and_one_class()
    {
        var names = Made.Value.Entries.SelectMany(e => e.Faults).Select(f => f.Fault.ToString()).ToList();
        Assert.Equal(Catalogue.Of(Kittiwake).Select(f => f.ToString()).Order(StringComparer.Ordinal), names.Order(StringComparer.Ordinal));
        Assert.Equal(Enumerable.Range(0, Made.Value.Entries.Length), Made.Value.Classes.SelectMany(c => c).Order());
        Assert.True(Made.Value.Healthy.IsHealthy);
        Assert.Equal(0, Made.Value.Healthy.Class);
    }

    /// <summary>Every entry is checked by the long run of that name; here some, by seed.</summary>
    [Fact]
    public void An_entry_is_what_a_rig_with_that_fault_shows()
    {
        var dictionary = Made.Value;
        var dice = new Random(20);
        for (var n = 0; n < 60; n++)
        {
            var entry = dictionary.Entries[dice.Next(dictionary.Entries.Length)];
            var s = dice.Next(dictionary.Stimuli.Length);
            var fault = entry.IsHealthy ? null : entry.Faults[dice.Next(entry.Faults.Length)].Fault;
            IsShown(dictionary, entry.Looks[s], dictionary.Stimuli[s], fault);
        }
    }

    [Fact]
    public void A_lost_ground_and_its_only_lead_left_out_are_one_entry()
    {
        var entry = Made.Value.Find("lost: ground bar")!;
        Assert.Equal(["open: battery minus", "lost: ground bar"], entry.Faults.Select(f => f.Fault.ToString()));
        Assert.Single(entry.Faults.Select(f => f.Repair).Distinct());
        Assert.Equal(entry.Faults.Sum(f => f.Prior()), entry.Prior, 1e-12);
    }

    private static void IsShown(FaultTable dictionary, Look look, Stimulus stimulus, Fault? fault)
    {
        var rig = fault is null ? new Rig(Kittiwake) : new Rig(Patch.Apply(Kittiwake, fault), new RigOptions { Healthy = Kittiwake });
        var frame = rig.Play(stimulus.Operations)[^1];
        var where = $"{fault} after {stimulus.Name}";
        Assert.Equal(frame.Outcome, look.Outcome);
        if (frame.Phases.IsEmpty)
        {
            Assert.Empty(look.Signs);
            return;
        }

        Assert.Equal(Told(frame), dictionary.Observables.Zip(look.Signs, (o, sign) => (o.Name, o.Word(sign))));
        Assert.True(Math.Abs(frame.Phases[0].Supply.Amps - look.SupplyAmps) < MeterAmps, where);
        var minus = Kittiwake.Parts.First(p => p.Kind == "battery").Name;
        for (var p = 0; p < dictionary.Points.Length; p += 7)
        {
            var volts = rig.Volts(dictionary.Points[p], new TerminalRef(minus, "-"))!.Value.Volts;
            Assert.True(Math.Abs(volts - look.Volts[p]) < MeterVolts, FormattableString.Invariant($"{where}: {dictionary.Points[p]} {volts} against {look.Volts[p]}"));
        }
    }

    private static IEnumerable<(string, string)> Told(Frame frame) =>
    [
        .. frame.Seen.Select(s => (s.Name, Words.Of(s.Symbol))),
        .. frame.Controllers.SelectMany(c => c.Lights.Select(l => ($"{c.Part}.{l.Terminal}", Words.OfLight(l.Symbol)))),
        .. frame.Relays.Select(r => (r.Part, r.PulledIn ? "pulled in" : "released")),
        .. frame.Fuses.Select(f => (f.Part, Words.Of(f.State))),
    ];
}

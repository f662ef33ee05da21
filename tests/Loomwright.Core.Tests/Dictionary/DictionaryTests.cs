using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Tests.Simulation;

namespace Loomwright.Tests.Dictionary;

public sealed class DictionaryTests
{
    // A common meter's last place on its 20 V range, and on its 10 A range.
    private const double MeterVolts = 0.01;
    private const double MeterAmps = 0.01;

    private static readonly Loom Kittiwake = Examples.Read("examples/kittiwake/kittiwake.loom.yaml");
    private static readonly Lazy<FaultTable> Made = new(() => FaultTable.Of(Kittiwake, new DictionaryOptions { Stimuli = [.. Stimuli.Usual(Kittiwake).Where((_, s) => s % 6 == 1)] }));

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

    /// <summary>Some of each bike, and of the one without a box every wrong setting.</summary>
    [Theory]
    [InlineData("kittiwake", 13, false, 3.0)]
    [InlineData("sandpiper", 29, true, 1.5)]
    public void Shortcuts_give_what_simulating_each_fault_to_the_end_gives(string bike, int every, bool settings, double fewer)
    {
        var loom = Examples.Read($"examples/{bike}/{bike}.loom.yaml");
        var options = new DictionaryOptions
        {
            Faults = [.. Catalogue.List(loom).Where((f, place) => place % every == 5 || (settings && f.Fault is Fault.Setting))],
            Stimuli = [.. Stimuli.Usual(loom).Where((_, s) => s % 6 == 1)],
        };
        var (made, whole) = Same(loom, options);
        Assert.InRange(made.Solves, 1, whole.Solves / fewer);
    }

    [Fact]
    public void Without_a_box_two_switches_of_the_wrong_sense_are_two_circuits()
    {
        var loom = new Sketch().Battery().Part("lamp", "lamp", ("filament", 21.0))
            .Part("front brake", "sensor switch", ("senses", "front brake")).Part("rear brake", "sensor switch", ("senses", "rear brake")).Part("neutral switch", "sensor switch", ("senses", "neutral"))
            .Part("neutral light", "tell-tale", ("filament", 3.0))
            .Wires(
                ("battery.+", "front brake.1"), ("front brake.2", "lamp.+"), ("battery.+", "rear brake.1"), ("rear brake.2", "lamp.+"), ("lamp.-", "battery.-"),
                ("battery.+", "neutral light.+"), ("neutral light.-", "neutral switch.1"), ("neutral switch.2", "battery.-"))
            .Loom;
        var (table, _) = Same(loom, new DictionaryOptions());
        var settings = Catalogue.List(loom).Where(f => f.Fault is Fault.Setting).ToList();
        Assert.Equal(4, settings.Count);
        Assert.All(settings, s => Assert.Equal([s.Fault], table.Find(s.Fault.ToString())!.Faults.Select(f => f.Fault)));
        Assert.Equal(4, settings.Select(s => table.Find(s.Fault.ToString())!.Class).Where(c => c != table.Healthy.Class).Distinct().Count());
    }

    /// <summary>The volts expected are from Newton's method in 60 digits on the whole network, with the meter's 10 MΩ.</summary>
    [Theory]
    [InlineData("flasher-load-sensing", "open: ground bar to battery -", "indicator switch → left", "indicator light.+", 6.612794)]
    [InlineData("starting", "short: kill switch.2 to main fuse.2", "neutral switch → in gear, start button → pressed", "neutral light.-", 9.087311)]
    public void A_meter_behind_nothing_but_the_leak_of_a_diode_reads_the_same_by_shortcuts(string example, string fault, string stimulus, string point, double volts)
    {
        var loom = Examples.Read($"examples/gallery/kinds/{example}.loom.yaml");
        var options = new DictionaryOptions
        {
            Faults = [.. Catalogue.List(loom).Where(f => f.Fault.ToString() == fault)],
            Stimuli = [.. Stimuli.Usual(loom).Where(s => s.Name == stimulus)],
        };
        foreach (var table in new[] { FaultTable.Of(loom, options), FaultTable.Of(loom, options with { Shortcuts = false }) })
        {
            Assert.Equal(volts, table.Find(fault)!.Looks.Single().Volts[table.Points.Select(p => p.ToString()).ToList().IndexOf(point)], 2e-4);
        }
    }

    [Fact]
    public void However_many_threads_work_the_table_is_the_same()
    {
        ImmutableArray<ListedFault> some = [.. Catalogue.List(Kittiwake).Where((_, f) => f % 40 == 7)];
        var options = new DictionaryOptions { Faults = some, Stimuli = Made.Value.Stimuli };
        var (one, three) = (FaultTable.Of(Kittiwake, options with { Workers = 1 }), FaultTable.Of(Kittiwake, options with { Workers = 3 }));
        Assert.Equal(one.Classes.Select(c => string.Join(' ', c)), three.Classes.Select(c => string.Join(' ', c)));
        Assert.All(one.Entries.Zip(three.Entries), e => Assert.All(e.First.Looks.Zip(e.Second.Looks), l =>
        {
            Assert.Equal(l.First.Signs, l.Second.Signs);
            Assert.Equal(l.First.Volts, l.Second.Volts);
        }));
    }

    [Fact]
    public void Two_opens_in_series_at_one_plug_look_alike_and_only_volts_at_the_plug_part_them()
    {
        var plug = new TerminalRef("tail plug", "4a");
        var table = Table(["open: stop", "open: stop lamp feed"], [Riding, Brake], plug);

        Assert.Equal(2, table.Classes.Length);
        Assert.Equal(table.Find("open: stop")!.Class, table.Find("open: stop lamp feed")!.Class);
        Assert.NotEqual(table.Healthy.Class, table.Find("open: stop")!.Class);
        Assert.InRange(table.Find("open: stop lamp feed")!.Looks[0].Volts[0], 11, 13);
        Assert.InRange(table.Find("open: stop")!.Looks[0].Volts[0], 0, 1);
    }

    [Fact]
    public void A_wire_moved_to_the_neighbour_and_two_wires_exchanged_look_different()
    {
        const string moved = "moved: stop end box.X8 to box.X9";
        const string swapped = "swapped: box.X8 with box.X9";
        var table = Table([moved, swapped], [new Operation.Set("lock", "park"), new Operation.Set("thumb beam", "pressed")]);

        Symbol Seen(string id, string name) => (Symbol)table.Find(id)!.Looks[0].Signs[table.Observables.IndexOf(table.Observables.Single(o => o.Name == name))];
        Assert.Equal((Symbol.Flashing, Symbol.Flashing), (Seen(moved, "beacon"), Seen(moved, "rear cluster.stop")));
        Assert.Equal((Symbol.Dark, Symbol.Flashing), (Seen(swapped, "beacon"), Seen(swapped, "rear cluster.stop")));
        Assert.NotEqual(table.Find(moved)!.Class, table.Find(swapped)!.Class);
    }

    [Fact]
    public void A_practised_builder_forgets_less_and_plain_pliers_make_bad_crimps()
    {
        var open = Catalogue.List(Kittiwake).Single(f => f.Fault.ToString() == "open: stop");
        Assert.Equal(0.008 + (2 * 0.003) + 0.005, open.Prior(), 1e-12);
        Assert.True(open.Prior(new PriorOptions { Builder = Builder.Practised }) < open.Prior() / 2);
        var high = Catalogue.List(Kittiwake).Single(f => f.Fault.ToString() == "high: stop 0.5 ohm");
        Assert.Equal(3 * high.Prior(), high.Prior(new PriorOptions { PlainPliers = true }), 1e-12);
    }

    [Fact]
    public void Every_row_of_the_table_of_priors_is_used_and_says_what_it_rests_on()
    {
        Assert.All(Priors.Table, r => Assert.StartsWith("judgement", r.Basis, StringComparison.Ordinal));
        var reused = new PriorOptions { Reused = [.. Kittiwake.Parts.Select(p => p.Name)] };
        var causes = Catalogue.List(Kittiwake).Concat(Catalogue.List(Kittiwake, reused)).Concat(Catalogue.List(Cases.Folders.Loom("44"))).SelectMany(f => f.Causes).Select(c => c.Kind).Distinct();
        Assert.Equal(Priors.Table.Select(r => r.Kind).Order(StringComparer.Ordinal), causes.Order(StringComparer.Ordinal));
    }

    private static (FaultTable Made, FaultTable Whole) Same(Loom loom, DictionaryOptions options)
    {
        var (made, whole) = (FaultTable.Of(loom, options), FaultTable.Of(loom, options with { Shortcuts = false }));
        Assert.All(whole.Entries.Skip(1), e => Assert.Single(e.Faults));
        Assert.All(made.Entries.SelectMany(e => e.Faults.Select(f => (Looks: e.Looks, f.Fault))), one => Assert.All(one.Looks.Zip(whole.Find(one.Fault.ToString())!.Looks), looks =>
        {
            Assert.Equal(looks.Second.Outcome, looks.First.Outcome);
            Assert.Equal(looks.Second.Signs, looks.First.Signs);
            Assert.All(looks.First.Volts.Zip(looks.Second.Volts), v => Assert.Equal(v.Second, v.First, MeterVolts));
        }));
        return (made, whole);
    }

    private static readonly Operation Riding = new Operation.Set("lock", "riding");
    private static readonly Operation Brake = new Operation.Set("front brake", "pulled");

    private static FaultTable Table(string[] ids, Operation[] operations, params TerminalRef[] points) => FaultTable.Of(Kittiwake, new DictionaryOptions
    {
        Faults = [.. Catalogue.List(Kittiwake).Where(f => ids.Contains(f.Fault.ToString(), StringComparer.Ordinal))],
        Stimuli = [Stimulus.Of([.. operations])],
        Points = [.. points],
    });

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

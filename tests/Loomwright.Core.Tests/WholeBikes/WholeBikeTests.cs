using System.Globalization;
using System.Text;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Findings;
using Loomwright.Long.Outfit;
using Loomwright.Simulation;
using Loomwright.Tests.Bench;
using Loomwright.Text;

namespace Loomwright.Tests.WholeBikes;

/// <summary>The three whole machines under examples/.</summary>
public sealed class WholeBikeTests
{
    private static readonly Dictionary<string, Bike> Read = new[] { "kittiwake", "sandpiper", "turnstone" }
        .ToDictionary(n => n, n => Bike.Read(new SourceText(n, Repository.Read($"examples/{n}/{n}.loom.yaml"))));

    public static TheoryData<string, string> Functions() =>
        [.. from bike in Read from function in bike.Value.Loom!.Functions select (bike.Key, function.Name)];

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    [InlineData("turnstone")]
    public void Each_reads_complete_and_no_rule_stops_at_it_or_asks_to_look(string name)
    {
        Assert.True(Read[name].IsComplete);
        Assert.DoesNotContain(Read[name].ReadingFindings.Concat(Read[name].Check()), f => f.Severity is Severity.Stop or Severity.Look);
    }

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    public void A_bench_plan_can_be_made_for_a_bike_whose_parts_share_a_control(string name) =>
        Assert.NotEmpty(Plans.OnTheBench(Plans.Bike(name)).Stages);

    [Fact]
    public void Kittiwake_is_a_whole_bike_with_things_to_remember_and_a_clock()
    {
        var bike = Read["kittiwake"];
        Assert.True(bike.Loom!.Wires.Length >= 90);
        var controls = bike.Controls;
        Assert.True(controls.Length >= 14);
        Assert.True(controls.Count(c => !c.Momentary) >= 7);
        var latches = bike.Loom.Functions.SelectMany(f => Latches(f.Works)).Distinct().ToList();
        Assert.True(latches.Count >= 4);
        Assert.Contains(latches, l => l.After is not null);
        Assert.Equal(12, Bike.Model(bike.Loom.Part("box")!).Controller!.Outputs.Length);
    }

    [Fact]
    public void Sandpiper_has_six_fuses_three_relays_a_flasher_and_no_box()
    {
        var loom = Read["sandpiper"].Loom!;
        Assert.True(loom.Wires.Length >= 50);
        Assert.Equal(6, loom.Parts.Count(p => p.Kind == "fuse"));
        Assert.Equal(3, loom.Parts.Count(p => p.Kind == "relay"));
        Assert.Single(loom.Parts, p => p.Kind == "flasher");
        Assert.DoesNotContain(loom.Parts, p => p.Kind == "load controller");
    }

    [Fact]
    public void Turnstone_is_what_its_program_makes_with_two_boxes_and_250_wires()
    {
        Assert.Equal(Turnstone.Text(), Repository.Read(Turnstone.Path).ReplaceLineEndings("\n"));
        var loom = Read["turnstone"].Loom!;
        Assert.True(loom.Wires.Length >= 250);
        Assert.Equal(2, loom.Parts.Count(p => p.Kind == "load controller"));
    }

    [Theory]
    [MemberData(nameof(Functions))]
    public void Every_function_shows_what_it_promises_in_the_first_setting_it_works_in(string name, string function)
    {
        var promise = Read[name].Loom!.Functions.First(f => f.Name == function);
        var rig = Read[name].Start();
        foreach (var operation in FirstSetting.Of(Read[name].Controls, promise.Works)!.Value)
        {
            rig.Do(operation);
        }

        Assert.Equal(Outcome.Settled, rig.Now.Outcome);
        Assert.All(promise.Shows, show => Assert.All(
            rig.Now.Seen.Where(s => IsOf(s, show)),
            s => Assert.Equal(show.Symbol, Word(s.Symbol))));
    }

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    public void What_each_function_shows_and_takes_is_the_accepted_summary(string name) =>
        Golden.Check($"bikes/{name}.txt", Summary(Read[name]));

    private static string Summary(Bike bike)
    {
        var controls = bike.Controls;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{bike.Loom!.Name}: {bike.Loom.Parts.Length} parts, {bike.Loom.Wires.Length} wires, ");
        text.Append(CultureInfo.InvariantCulture, $"{controls.Length} controls of which {controls.Count(c => !c.Momentary)} stay put, {bike.Loom.Functions.Length} functions\n\n");
        foreach (var function in bike.Loom.Functions)
        {
            var rig = bike.Start();
            var setting = FirstSetting.Of(bike.Controls, function.Works)!.Value;
            foreach (var operation in setting)
            {
                rig.Do(operation);
            }

            var set = string.Join(", ", setting.Cast<Operation.Set>().Select(s => $"{s.Control} {s.Position}"));
            var shown = string.Join(", ", Shown(rig.Now, function).Select(s => $"{s.Name} {Word(s.Symbol)}"));
            text.Append(CultureInfo.InvariantCulture, $"{function.Name}: {set} -> {shown}; {rig.Now.Phases[0].Supply.Amps:F2} A\n");
        }

        return text.ToString();
    }

    private static IEnumerable<Seen> Shown(Frame frame, Function function) =>
        frame.Seen.Where(s => function.Shows.Any(show => IsOf(s, show)));

    private static bool IsOf(Seen seen, Show show) => Names.Same(seen.Name, show.What) || Names.Same(seen.Part, show.What);

    private static IEnumerable<Expression.Latching> Latches(Expression of) =>
        (of is Expression.Latching latch ? [latch] : Enumerable.Empty<Expression.Latching>()).Concat(of.Inner.SelectMany(Latches));

    private static string Word(Symbol symbol) => symbol.ToString().ToLowerInvariant();
}

using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Simulation;

namespace Loomwright.Tests.Bench;

/// <summary>Starters, pumps and coils are made for seconds: on through one reading, then off before the next.</summary>
public sealed class ForSecondsTests
{
    public static TheoryData<string> Bikes => ["kittiwake", "sandpiper", "turnstone", "starting", "starting on positive ground"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_starter_pump_or_coil_is_on_through_two_readings_on_the_bench(string bike) => Reads(Plans.OnTheBench(Of(bike)));

    [Theory]
    [MemberData(nameof(Bikes))]
    public void No_starter_pump_or_coil_is_on_through_two_readings_on_the_bike(string bike) => Reads(Plans.OnTheBike(Of(bike)));

    [Fact]
    public void What_the_key_alone_would_run_is_off_and_capped_once_it_has_been_shown()
    {
        var stages = Plans.OnTheBench(Starting.Bike).Stages;
        foreach (var part in new[] { "fuel pump", "ignition coil" })
        {
            var own = stages.Single(s => s.Title == part).Number;
            Assert.Contains(stages[own + 1].Steps, s => s.Act == Act.TakeOut && s.Part == part);
            Assert.All(stages.Skip(own + 1), s => Assert.DoesNotContain(new Rig(s.Connected).Now.Seen, x => x.Part == part));
        }
    }

    private static void Reads(Plan plan)
    {
        foreach (var stage in plan.Stages.Where(s => s.Title != "charging"))
        {
            var rig = new Rig(stage.Connected);
            var since = 0;
            foreach (var step in stage.Steps.Where(s => s.PowerOn))
            {
                var frame = step.Do is { } set ? rig.Do(set) : step.Wait is { } time ? rig.Do(new Operation.Wait(time)) : rig.Now;
                var isOn = frame.Seen.Any(s => stage.Connected.Part(s.Part)!.Kind is "starter" or "fuel pump" or "ignition coil" && s.Symbol is Symbol.Turns or Symbol.Works);
                since = !isOn ? 0 : since + (step.Meter is null ? 0 : 1);
                Assert.True(since <= 1, $"{step.Id} {step.Text}");
            }
        }
    }

    private static Loom Of(string bike) => bike switch
    {
        "starting" => Starting.Bike,
        "starting on positive ground" => Starting.PositiveGround,
        _ => Plans.Bike(bike),
    };
}

namespace Loomwright.Bench.OnTheBike;

/// <summary>What the bike draws asleep, a meter in line.</summary>
internal sealed class KeyOff(Everything bike)
{
    private static readonly TimeSpan UntilAsleep = TimeSpan.FromMinutes(5);

    public Stage Stage(int number)
    {
        var steps = new Steps(number);
        var tour = new Tour(bike, steps, bike.Aside.WithoutStarter);
        var (post, lead) = (bike.Mark(bike.Paths.Return), new Mark(bike.Paths.Return, "the lead taken off it"));
        var isLeadRed = bike.Paths.Return.Equals(bike.Paths.Minus);
        steps.Add(Act.PowerUp, $"Key off, everything off. {bike.Mark(bike.Paths.Feed)} on. Meter in line: the lead off {post}, {(isLeadRed ? "red" : "black")} clip on it, {(isLeadRed ? "black" : "red")} clip on the post.", s => s with
        {
            Marks = [post],
            PowerOn = true,
            Meter = new MeterCard(Dial.Amps, "10 A", "COM", isLeadRed ? lead : post, isLeadRed ? post : lead, "Clips on both leads. Nothing is switched on while the meter is in line; below 0.2 A go down to mA.", PowerOn: true),
            Cautions = bike.Once.Say(Cautions.InGroundLead, Cautions.AmpsSocket),
        });
        var frame = tour.Wait(UntilAsleep);
        var band = Bands.Of(frame.Phases[0].Supply);
        steps.Add(Act.Operate, "Wait 5 min, until every box sleeps, then read.", s => s with
        {
            Wait = UntilAsleep,
            PowerOn = true,
            Expect = [new Expectation("key-off current", Bands.Words(band), band)],
        });
        steps.Add(Act.PowerDown, $"Meter out: its clip off {post} first, then the red plug back to V. The lead stays off.", s => s with { PowerOn = true });
        return bike.Stage(number, "key-off current", "Milliamps flatten a battery in weeks: 5 mA take 4 Ah in 33 days.", steps, tour.Frames, bike.Aside.WithoutStarter);
    }
}

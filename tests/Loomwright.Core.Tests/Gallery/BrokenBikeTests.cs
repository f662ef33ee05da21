using Loomwright.Gallery;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Tests.Gallery;

public sealed class BrokenBikeTests
{
    private static readonly Dictionary<string, Bike> Bikes = BrokenBike.All.Select(b => b.Path).Distinct(StringComparer.Ordinal)
        .ToDictionary(p => p, p => Bike.Read(new SourceText(p, Repository.Read($"examples/{p}"))), StringComparer.Ordinal);

    private static readonly string[] GiveAway = ["swapped", "moved", "terminal", "left out", "wrong way", "wire"];

    public static TheoryData<int> Numbers => [.. Enumerable.Range(0, BrokenBike.All.Length)];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void The_symptom_told_is_what_the_mistake_shows_and_the_sound_bike_does_not(int number)
    {
        var broken = BrokenBike.All[number];
        Assert.Equal(broken.Shows, Seen(broken, faulty: true));
        Assert.NotEqual(broken.Shows, Seen(broken, faulty: false));
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void The_sentence_does_not_give_the_mistake_away(int number)
    {
        var broken = BrokenBike.All[number];
        Assert.All(GiveAway, word => Assert.DoesNotContain(word, broken.Symptom, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void There_are_twenty_or_more_and_no_two_are_alike()
    {
        Assert.InRange(BrokenBike.All.Length, 20, 99);
        Assert.Equal(BrokenBike.All.Length, BrokenBike.All.Select(b => b.Symptom).Distinct(StringComparer.Ordinal).Count());
    }

    private static Symbol Seen(BrokenBike broken, bool faulty)
    {
        var bike = Bikes[broken.Path];
        var rig = bike.Start(faulty ? bike.Fault(broken.Fault).Fault! : null);
        foreach (var (control, position) in broken.Do)
        {
            rig.Do(new Operation.Set(control, position));
        }

        return rig.Now.Seen.Single(s => Names.Same(s.Name, broken.Sight)).Symbol;
    }
}

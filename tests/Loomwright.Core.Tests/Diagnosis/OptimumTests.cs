using Loomwright.Long.Policy;

namespace Loomwright.Tests.Diagnosis;

/// <summary>The oracle that the order of asking is held against, on sets worked by hand and on small ones tried through.</summary>
public sealed class OptimumTests
{
    [Fact]
    public void Eight_alike_causes_take_three_questions_that_halve()
    {
        var halves = Enumerable.Range(0, 3).Select(bit => Choice.Of(1, Enumerable.Range(0, 8).Select(c => c >> bit & 1)));
        Assert.Equal(3, Least(Alike(8), [.. halves, .. Own(8, 1)]), 1e-12);
    }

    /// <summary>Huffman's construction (1952), worked by hand: 0.1 + 0.1, 0.2 + 0.2, 0.2 + 0.4, 0.4 + 0.6: 2.2 questions.</summary>
    [Fact]
    public void With_every_split_at_one_price_it_takes_what_a_shortest_code_takes()
    {
        var splits = Enumerable.Range(1, 15).Select(mask => Choice.Of(1, Enumerable.Range(0, 5).Select(c => mask >> c & 1)));
        Assert.Equal(2.2, Least([0.4, 0.2, 0.2, 0.1, 0.1], [.. splits]), 1e-12);
    }

    /// <summary>By hand: the 0.3 first for one minute, then for 0.7 of the cases the 0.2 for one; the half that is dear to look at is never looked at.</summary>
    [Fact]
    public void What_is_dear_to_look_at_is_found_by_leaving_it_over()
    {
        Choice[] own = [Choice.Of(2, [1, 0, 0]), Choice.Of(1, [0, 1, 0]), Choice.Of(1, [0, 0, 1])];
        Assert.Equal(1.7, Least([0.5, 0.3, 0.2], own), 1e-12);
    }

    [Fact]
    public void Causes_with_the_same_repair_are_not_parted()
    {
        var riddle = new Riddle([0.5, 0.25, 0.25], [0, 0, 1], [Choice.Of(1, [0, 0, 1]), Choice.Of(0.5, [0, 1, 1])]);
        Assert.Equal(1, Of(riddle, 9), 1e-12);
    }

    [Fact]
    public void On_small_sets_it_is_what_trying_every_order_gives()
    {
        for (var seed = 1; seed <= 200; seed++)
        {
            var riddle = Drawn(new Random(seed));
            var tried = Tried(riddle, riddle.All);
            Assert.Equal(tried, Of(riddle, tried * 2), 1e-9);
            Assert.Equal(tried, Of(riddle, tried), 1e-9);
        }
    }

    private static double[] Alike(int count) => [.. Enumerable.Repeat(1.0 / count, count)];

    private static IEnumerable<Choice> Own(int count, double minutes) => Enumerable.Range(0, count).Select(c => Choice.Of(minutes, Enumerable.Range(0, count).Select(o => o == c ? 1 : 0)));

    private static double Least(double[] weights, Choice[] choices) => Of(new Riddle(weights, [.. Enumerable.Range(0, weights.Length)], choices), 99);

    private static double Of(Riddle riddle, double atMost)
    {
        var (minutes, proven) = Optimum.Of(riddle, atMost, TimeSpan.FromMinutes(1));
        Assert.True(proven);
        return minutes;
    }

    private static Riddle Drawn(Random random)
    {
        var count = random.Next(2, 7);
        var several = Enumerable.Range(0, 5).Select(_ => Choice.Of(0.3 + (0.1 * random.Next(10)), [.. Enumerable.Range(0, count).Select(_ => random.Next(3))]));
        return new([.. Enumerable.Range(0, count).Select(_ => Math.Exp(3 * random.NextDouble()))], [.. Enumerable.Range(0, count).Select(_ => random.Next(count))], [.. several, .. Own(count, 2)]);
    }

    private static double Tried(Riddle riddle, ulong left) => riddle.Known(left) ? 0 : riddle.Choices
        .Select(c => (c.Minutes, Parts: c.Answers.Select(a => a & left).Where(a => a != 0).ToList())).Where(c => c.Parts.Count > 1)
        .Min(c => (c.Minutes * riddle.Weight(left)) + c.Parts.Sum(p => Tried(riddle, p)));
}

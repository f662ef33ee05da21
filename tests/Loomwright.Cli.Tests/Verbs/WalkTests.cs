namespace Loomwright.Tests.Verbs;

public sealed class WalkTests
{
    public static TheoryData<string> Designs => [Called.Bench, .. Called.Gallery];

    [Theory]
    [MemberData(nameof(Designs))]
    public void A_design_is_walked_to_its_end(string file) => Golden.Check($"walk/{Called.NameOf(file)}.txt", Called.With("walk", file).Golden);

    [Fact]
    public void The_same_for_a_machine() => Golden.Check("walk/kittiwake-bench.json", SixFigures.Of(Called.With("walk", Called.Bench, "--json").Out));

    [Fact]
    public void A_walk_cut_short_is_something_to_look_at_and_says_so()
    {
        var called = Called.With("walk", Called.Bench, "--limit", "5");
        Assert.Equal(ExitCode.Look, called.Exit);
        Assert.Contains("Not every position was walked", called.Out, StringComparison.Ordinal);

        var answer = Answered.Read(Called.With("walk", Called.Bench, "--limit", "5", "--json"));
        Assert.False(answer.GetProperty("complete").GetBoolean());
        Assert.Equal("limit", answer.GetProperty("end").GetString());
    }
}

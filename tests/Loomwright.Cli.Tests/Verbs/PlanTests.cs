using System.Globalization;

namespace Loomwright.Tests.Verbs;

public sealed class PlanTests
{
    public static TheoryData<string> Designs => [Called.Bench, .. Called.Gallery];

    [Theory]
    [MemberData(nameof(Designs))]
    public void A_design_gets_its_stages(string file) =>
        Golden.Check($"plan/{Called.NameOf(file)}.txt", Called.Once("plan", file).Golden);

    [Fact]
    public void The_same_for_a_machine() =>
        Golden.Check("plan/kittiwake-bench.json", SixFigures.Of(Called.Once("plan", Called.Bench, "--json").Out));

    [Fact]
    public void A_bench_supply_takes_the_place_of_the_battery()
    {
        var called = Called.With("plan", Called.Bench, "--supply", "5A");
        Golden.Check("plan/kittiwake-bench-on-a-supply.txt", called.Golden);
        Assert.NotEqual(Called.Once("plan", Called.Bench).Out, called.Out);
    }

    [Fact]
    public void A_part_that_is_not_on_the_table_is_not_fetched()
    {
        var whole = Fetched("plan", Called.Bench, "--json");
        var few = Fetched("plan", Called.Bench, "--json", "--on-table", "battery", "--on-table", "main fuse", "--on-table", "key fuse", "--on-table", "lock", "--on-table", "box", "--on-table", "ground bar");
        Assert.Contains("left rear indicator", whole);
        Assert.DoesNotContain("left rear indicator", few);
    }

    [Fact]
    public void No_line_is_wider_than_a_page() =>
        Assert.All(Called.Once("plan", Called.Bench).Out.Split('\n'), line => Assert.InRange(new StringInfo(line).LengthInTextElements, 0, 100));

    private static List<string?> Fetched(params string[] call) =>
    [
        .. Answered.Read(Called.Once(call)).GetProperty("stages").EnumerateArray()
            .SelectMany(s => s.GetProperty("steps").EnumerateArray())
            .Select(s => s.GetProperty("part").GetString()),
    ];
}

using Loomwright.Diagnosis;

namespace Loomwright.Tests.Diagnosis;

public sealed class SearchTests
{
    private const int Count = 200;
    private const double Misreads = 0.02;

    /// <summary>The bench example: its dictionary takes seconds. The whole bikes are played by the long run.</summary>
    [Fact]
    public void Two_hundred_searches_on_the_bench_end_as_counted()
    {
        var sessions = new Searches(Examples.Kittiwake, TroubleTable.Of(Examples.Kittiwake, stop: TestContext.Current.CancellationToken));
        Golden.Check("searches.md", SearchCounts.Of("kittiwake-bench", [.. Enumerable.Range(1, Count).Select(seed => sessions.One(seed, Misreads))]).ToText());
    }
}

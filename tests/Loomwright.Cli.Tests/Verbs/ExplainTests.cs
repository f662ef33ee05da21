using Loomwright.Findings;

namespace Loomwright.Tests.Verbs;

public sealed class ExplainTests
{
    [Fact]
    public void A_finding_is_explained_by_its_page()
    {
        Golden.Check("explain/unfused-feed.txt", Called.With("explain", "unfused-feed").Golden);
        Golden.Check("explain/unfused-feed.json", Called.With("explain", "unfused-feed", "--json").Out);
    }

    [Fact]
    public void Every_page_can_be_asked_for() =>
        Assert.All(Page.All, page => Assert.Equal(ExitCode.Answered, Called.With("explain", page.Code).Exit));

    [Fact]
    public void Every_finding_of_the_examples_can_be_explained() =>
        Assert.All(
            Called.Gallery.Append(Called.Bench).SelectMany(f => Answered.Read(Called.With("check", f, "--json")).GetProperty("findings").EnumerateArray()),
            finding => Assert.Equal(ExitCode.Answered, Called.With("explain", finding.GetProperty("code").GetString()!).Exit));

    [Fact]
    public void A_finding_there_is_not_gets_the_nearest()
    {
        var called = Called.With("explain", "unfused-fed");
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.StartsWith("There is no finding unfused-fed. Did you mean unfused-feed?", called.Error, StringComparison.Ordinal);
    }
}

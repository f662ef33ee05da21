using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.Checks;

public class LawTests
{
    [Theory]
    [InlineData(null, Severity.Note, "not set")]
    [InlineData("Great Britain", Severity.Look, "motorcycle inspection manual")]
    [InlineData("AU", Severity.Look, "ADR 19/00")]
    [InlineData("usa", Severity.Look, "FMVSS 108")]
    [InlineData("Atlantis", Severity.Note, "not known here")]
    public void A_flash_rate_out_of_bounds_is_a_look_only_where_a_law_that_was_read_counts(string? country, Severity severity, string told)
    {
        var found = Assert.Single(In("flash-rate", country), f => f.Code == "flash-rate");
        Assert.Equal(severity, found.Severity);
        Assert.Contains(told, found.Why + found.Do, StringComparison.Ordinal);
        Assert.Contains("check what counts for your bike", found.Do, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hazard-needs-key")]
    [InlineData("main-beam-untold")]
    [InlineData("headlamp-out-while-running")]
    [InlineData("horn-silent")]
    public void What_is_told_from_memory_stays_a_note_wherever_the_bike_is(string code)
    {
        var found = Assert.Single(In(code, "Germany"), f => f.Code == code);
        Assert.Equal(Severity.Note, found.Severity);
        Assert.Contains("from memory", found.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("kittiwake")]
    [InlineData("sandpiper")]
    [InlineData("turnstone")]
    public void The_whole_bikes_have_nothing_to_stop_for_and_nothing_to_look_at(string bike) =>
        Assert.DoesNotContain(Rules.Check(Examples.Read($"examples/{bike}/{bike}.loom.yaml")), f => f.Severity > Severity.Note);

    private static ImmutableArray<Finding> In(string code, string? country)
    {
        var sample = Page.Find(code)!.Text.Split("```yaml\n")[1].Split("```")[0];
        var loom = DesignFile.Read(new SourceText("sample", sample)).Loom!;
        return Rules.Check(loom with { Conditions = loom.Conditions with { Country = country } });
    }
}

using System.Globalization;

namespace Loomwright.Tests.Verbs;

public sealed class SizeTests
{
    [Fact]
    public void A_design_is_sized_by_the_usual_rule() => Golden.Check("size/kittiwake-bench.txt", Called.With("size", Called.Bench).Golden);

    [Fact]
    public void The_same_for_a_machine() => Golden.Check("size/kittiwake-bench.json", SixFigures.Of(Called.With("size", Called.Bench, "--json").Out));

    [Fact]
    public void Another_rule_may_be_asked_and_is_named()
    {
        var called = Called.With("size", Called.Bench, "--rule", "33 cfr 183.425");
        Assert.Equal(ExitCode.Answered, called.Exit);
        Assert.StartsWith("By 33 CFR 183.425: ", called.Out, StringComparison.Ordinal);
        Assert.NotEqual(Called.With("size", Called.Bench).Out, called.Out);
    }

    [Fact]
    public void A_rule_there_is_not_gets_the_nearest_and_the_list()
    {
        var called = Called.With("size", Called.Bench, "--rule", "metric practise");
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.StartsWith("There is no ampacity rule metric practise. Did you mean metric practice? The ampacity rules are: ", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_the_file_names_and_nobody_knows_is_said_and_the_one_taken_is_the_one_check_takes()
    {
        using var folder = new Folder();
        var file = folder.Write("bike.loom.yaml", Repository.Read("docs/findings/ampacity-rule-unknown.md").Split("```yaml\n")[1].Split("```")[0]);
        var sized = Called.With("size", file);
        Assert.Equal(ExitCode.Answered, sized.Exit);
        Assert.StartsWith("There is no ampacity rule metric practise. Did you mean metric practice? ", sized.Error, StringComparison.Ordinal);
        Assert.EndsWith(" Sized by metric practice.", sized.Error.TrimEnd(), StringComparison.Ordinal);
        Assert.StartsWith("By metric practice: ", sized.Out, StringComparison.Ordinal);
        var told = Assert.Single(Answered.Read(Called.With("check", file, "--json")).GetProperty("findings").EnumerateArray(), f => f.GetProperty("code").GetString() == "ampacity-rule-unknown");
        Assert.Equal((4, 18), (told.GetProperty("where").GetProperty("line").GetInt32(), told.GetProperty("where").GetProperty("column").GetInt32()));
        Assert.Contains("judged by metric practice", told.GetProperty("what").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void No_wire_of_the_bench_example_is_thinner_than_what_is_enough() =>
        Assert.All(Answered.Read(Called.With("size", Called.Bench, "--json")).GetProperty("wires").EnumerateArray(), w => Assert.True(w.GetProperty("enough_mm2").GetDouble() <= w.GetProperty("mm2").GetDouble()));

    [Fact]
    public void No_line_is_wider_than_a_page() =>
        Assert.All(Called.With("size", Called.Bench).Out.Split('\n'), line => Assert.InRange(new StringInfo(line).LengthInTextElements, 0, 100));
}

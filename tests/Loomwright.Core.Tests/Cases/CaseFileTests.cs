using System.Text.Json;
using Json.Schema;
using Loomwright.Cases;
using Loomwright.ProjectFile;
using Loomwright.Text;
using Loomwright.Tests.ProjectFile;

namespace Loomwright.Tests.Cases;

public class CaseFileTests
{
    private const string Small = "account: a\ngrade: C\ncause: [\"open: rear ground\"]\nsaw:\n  - {do: [lock=on], see: {lamp: dark}}\naccept: [clean it]\n";

    private static readonly JsonSchema Schema = JsonSchema.FromText(CaseSchema.Text());

    public static TheoryData<string> Numbers => [.. Folders.Numbers];

    [Fact]
    public void The_page_shows_a_case_that_is_read_without_complaint()
    {
        var page = Pages.Read("docs/cases.md").ReplaceLineEndings("\n");
        var shown = page.Split("```yaml\n")[1].Split("```")[0];
        Assert.Empty(Read(shown).Findings);
        Assert.Equal(["open: rear ground"], Read(shown).Case!.Cause);
    }

    [Theory]
    [InlineData("grade: C", "grade: Q", "unknown-choice")]
    [InlineData("accept: [clean it]\n", "", "key-missing")]
    [InlineData("do: [lock=on], ", "", "key-missing")]
    [InlineData("account: a", "account: a\nacount: b", "unknown-key")]
    [InlineData("{do: [lock=on], see: {lamp: dark}}", "lamp is dark", "wrong-shape")]
    public void A_slip_is_told_and_the_schema_does_not_take_it(string written, string slip, string code)
    {
        Assert.Empty(Read(Small).Findings);
        Assert.True(Fits(Small));
        var slipped = Small.Replace(written, slip, StringComparison.Ordinal);
        Assert.Contains(Read(slipped).Findings, f => f.Code == code);
        Assert.False(Fits(slipped));
    }

    [Theory]
    [InlineData("open: rear ground", "open: nothing", "open: nothing")]
    [InlineData("lock=on", "lock=onn", "lock=onn")]
    [InlineData("lock=on", "turn it on", "turn it on")]
    [InlineData("lamp: dark", "lamb: dark", "lamb")]
    public void A_name_that_means_nothing_in_the_circuit_is_a_problem_of_the_case(string written, string slip, string where)
    {
        var loom = Examples.Of("""
            loomwright: 1
            name: one lamp
            parts:
              battery: {kind: battery, chemistry: agm}
              lock: {kind: switch, terminals: [a, b], positions: {off: [], on: [[a, b]]}}
              lamp: {kind: lamp, filament: 5 W}
            wires:
              - {name: feed, from: battery.+, to: lock.a, size: 1 mm2, length: 1 m}
              - {name: lamp feed, from: lock.b, to: lamp.+, size: 1 mm2, length: 1 m}
              - {name: rear ground, from: lamp.-, to: battery.-, size: 1 mm2, length: 1 m}
            """);
        Assert.True(Trial.Of(loom, Read(Small).Case!).Agrees);
        var trial = Trial.Of(loom, Read(Small.Replace(written, slip, StringComparison.Ordinal)).Case!);
        Assert.Equal(where, Assert.Single(trial.Problems).Path);
        Assert.False(trial.Agrees);
    }

    [Theory]
    [InlineData("9 V to 10 V", 9.5, true)]
    [InlineData("9 V to 10 V", 10.5, false)]
    [InlineData("above 7 A", 7.5, true)]
    [InlineData("below 10 mA", 0.011, false)]
    [InlineData("below 60 % light", 0.59, true)]
    public void A_band_holds_what_lies_in_it(string band, double value, bool holds) => Assert.Equal(holds, Band.Read(band)!.Value.Holds(value));

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_case_fits_the_published_schema(string number) => Assert.True(Fits(Folders.Text(number, "case").Content));

    [Fact]
    public void The_published_schema_is_the_one_the_declarations_give()
    {
        var published = Path.Combine(Pages.Root(), "docs/schemas/case.schema.json");
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1" && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")))
        {
            File.WriteAllText(published, CaseSchema.Text());
        }

        Assert.Equal(CaseSchema.Text(), File.ReadAllText(published).ReplaceLineEndings("\n"));
    }

    private static CaseFile Read(string content) => CaseFile.Read(new SourceText("case", content));

    private static bool Fits(string content)
    {
        using var json = JsonDocument.Parse(ExamplesTests.Json(Written.Tree(content).Root)!.ToJsonString());
        return Schema.Evaluate(json.RootElement).IsValid;
    }
}

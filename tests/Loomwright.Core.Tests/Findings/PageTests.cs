using System.Text.RegularExpressions;
using Loomwright.Checks;
using Loomwright.Findings;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.Findings;

public partial class PageTests
{
    // Its sample would be two million characters.
    private const string TooLarge = "file-too-large";

    public static TheoryData<string> Sampled => [.. Page.All.Select(p => p.Code).Where(c => c != TooLarge)];

    [Fact]
    public void Every_rule_has_a_page_and_every_page_is_a_rule_or_a_finding_of_the_reader()
    {
        var codes = Rules.All.Select(r => r.Code).Concat(ReadersCodes());
        Assert.Equal(codes.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), Page.All.Select(p => p.Code));
    }

    [Theory]
    [MemberData(nameof(Sampled))]
    public void The_first_sample_of_a_page_raises_its_finding_and_the_second_neither_that_nor_anything_above_a_note(string code)
    {
        var samples = Samples(code);
        Assert.Equal(2, samples.Length);
        Assert.Contains(code, Found(samples[0]).Select(f => f.Code));
        Assert.DoesNotContain(Found(samples[1]), f => f.Code == code || f.Severity > Severity.Note);
    }

    [Fact]
    public void A_file_of_more_than_two_million_characters_is_too_large()
    {
        Assert.Contains(TooLarge, Found(new string('#', Tree.MostCharacters + 1)).Select(f => f.Code));
        Assert.DoesNotContain(TooLarge, Found(new string('#', Tree.MostCharacters)).Select(f => f.Code));
    }

    [Theory]
    [MemberData(nameof(Sampled))]
    public void A_page_says_what_is_seen_why_it_matters_and_what_to_do(string code)
    {
        var page = Page.Find(code)!.Text;
        Assert.StartsWith($"# {code}\n", page, StringComparison.Ordinal);
        Assert.All(["**What is seen.** ", "**Why it matters.** ", "**What to do.** "], part => Assert.Contains(part, page, StringComparison.Ordinal));
    }

    [Fact]
    public void A_page_is_found_whatever_the_case_and_no_page_is_found_for_no_code()
    {
        Assert.Equal("unfused-feed", Page.Find(" Unfused-Feed ")?.Code);
        Assert.Null(Page.Find("nothing-of-the-kind"));
    }

    [Fact]
    public void What_is_embedded_is_what_is_published() =>
        Assert.All(Page.All, p => Assert.Equal(Repository.Read($"docs/findings/{p.Code}.md").ReplaceLineEndings("\n"), p.Text));

    [Fact]
    public void A_number_in_what_a_rule_says_comes_only_from_its_evidence()
    {
        var found = Rules.All.SelectMany(r => Found(Samples(r.Code)[0])).ToList();
        Assert.NotEmpty(found);
        Assert.All(found, f => Assert.All([f.WhatTemplate, f.WhyTemplate, f.DoTemplate], t => Assert.DoesNotMatch("[0-9]", t)));
    }

    [Theory]
    [MemberData(nameof(Sampled))]
    public void No_name_out_of_the_program_stands_in_what_a_person_reads(string code) =>
        Assert.All(Found(Samples(code)[0]), f => Assert.All([f.WhatTemplate, f.WhyTemplate, f.DoTemplate], t => Assert.DoesNotMatch(@"\w\.[A-Z]", t)));

    [Theory]
    [MemberData(nameof(Sampled))]
    public void No_brace_is_left_in_what_a_person_reads(string code) =>
        Assert.All(Found(Samples(code)[0]).Where(f => f.Code == code), f => Assert.All([f.What, f.Why, f.Do], t => Assert.DoesNotMatch("[{}]", t)));

    [Fact]
    public void A_rule_keeps_within_the_severities_it_states() =>
        Assert.All(Rules.All, r => Assert.All(Found(Samples(r.Code)[0]).Where(f => f.Code == r.Code), f => Assert.InRange(f.Severity, r.Least, r.Most)));

    private static string[] Samples(string code) => [.. Page.Find(code)!.Text.Split("```yaml\n").Skip(1).Select(after => after.Split("```")[0])];

    private static IEnumerable<Finding> Found(string text)
    {
        var file = DesignFile.Read(new SourceText("sample", text));
        return file.Loom is null ? file.Findings : file.Findings.Concat(Rules.Check(file.Loom));
    }

    private static IEnumerable<string> ReadersCodes() => Directory.GetFiles(Path.Combine(Repository.Root, "src/Loomwright.Core/ProjectFile"), "*.cs")
        .SelectMany(f => Told().Matches(File.ReadAllText(f)))
        .SelectMany(m => Slug().Matches(m.Value))
        .Select(m => m.Groups["code"].Value);

    // What follows an opening bracket up to the place: found.Stop("code", at … or new("code", span …
    [GeneratedRegex("(Stop|Look|Note|new)\\(\\s*[^;{}]*?,", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Told();

    [GeneratedRegex("\"(?<code>([a-z]+-)+[a-z]+|indentation)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Slug();
}

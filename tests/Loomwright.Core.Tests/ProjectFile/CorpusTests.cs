namespace Loomwright.Tests.ProjectFile;

public sealed class CorpusTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private static readonly string Folder = Path.Combine(Pages.Root(), "tests/Loomwright.Core.Tests/ProjectFile/corpus");

    public static TheoryData<string> Malformed => [.. Directory.GetFiles(Folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Malformed))]
    public void A_malformed_file_gives_a_loom_or_says_where_it_is_broken(string name)
    {
        var content = File.ReadAllText(Path.Combine(Folder, name));
        Assert.Null(ReadingPromise.BrokenBy(content, Patience));
        Assert.NotEmpty(Written.File(content).Findings);
    }

    [Fact]
    public void There_are_enough_malformed_files_by_hand() => Assert.True(Malformed.Count >= 40, $"only {Malformed.Count}");

    [Theory]
    [InlineData("kittiwake-bench/kittiwake-bench", 0, 200)]
    [InlineData("gallery/lock-joins-feed-and-ground", 1000, 200)]
    public void A_spoilt_design_gives_a_loom_or_says_where_it_is_broken(string example, int first, int count)
    {
        var design = Pages.Read($"examples/{example}.loom.yaml");
        for (var number = first; number < first + count; number++)
        {
            var broken = ReadingPromise.BrokenBy(Mutants.Of(design, number), Patience);
            Assert.True(broken is null, FormattableString.Invariant($"mutant {number} of {example}: {broken}"));
        }
    }

    [Theory]
    [InlineData("[", 100_000)]
    [InlineData("{a: ", 100_000)]
    [InlineData("- ", 100_000)]
    [InlineData("a:\n ", 5_000)]
    [InlineData("'", 100_001)]
    [InlineData("\"\\", 50_000)]
    [InlineData("? ", 50_000)]
    [InlineData("a: b\n", 60_000)]
    [InlineData("x: [\n", 20_000)]
    [InlineData("#", 200_000)]
    [InlineData("\n", 200_000)]
    [InlineData("  - {a: [b\n", 5_000)]
    public void Whatever_is_repeated_without_end_it_is_read_in_good_time(string piece, int times) =>
        Assert.Null(ReadingPromise.BrokenBy("loomwright: 1\nparts:\n" + string.Concat(Enumerable.Repeat(piece, times)), Patience));

    [Fact]
    public void A_staircase_of_broken_blocks_is_read_in_good_time() =>
        Assert.Null(ReadingPromise.BrokenBy("loomwright: 1\n" + string.Concat(Enumerable.Range(0, 400).Select(i => new string(' ', i) + "a:\n")) + new string(' ', 400) + "b: [\n", Patience));
}

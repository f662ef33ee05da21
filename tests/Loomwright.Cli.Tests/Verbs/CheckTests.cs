using System.Globalization;

namespace Loomwright.Tests.Verbs;

public sealed class CheckTests
{
    public static TheoryData<string> Designs => [Called.Bench, .. Called.Gallery];

    [Theory]
    [MemberData(nameof(Designs))]
    public void A_design_is_told_what_is_wrong_with_it(string file) =>
        Golden.Check($"check/{Called.NameOf(file)}.txt", Called.With("check", file).Golden);

    [Theory]
    [MemberData(nameof(Designs))]
    public void The_same_for_a_machine(string file) =>
        Golden.Check($"check/{Called.NameOf(file)}.json", SixFigures.Of(Called.With("check", file, "--json").Out));

    [Fact]
    public void The_bench_example_raises_nothing_to_look_at() =>
        Assert.Equal(ExitCode.Answered, Called.With("check", Called.Bench).Exit);

    [Fact]
    public void Every_broken_variant_raises_something_to_look_at() =>
        Assert.All(Called.Gallery, file => Assert.Equal(ExitCode.Look, Called.With("check", file).Exit));

    [Fact]
    public void A_missing_file_is_said_in_one_line_with_its_place()
    {
        var called = Called.With("check", "nowhere.loom.yaml");
        Assert.Equal(ExitCode.Unreadable, called.Exit);
        Assert.Equal("nowhere.loom.yaml:1:1: there is no such file; look at the spelling and the folder\n", called.Error);
        Assert.Empty(called.Out);
    }

    [Fact]
    public void A_text_that_is_no_design_names_line_and_column()
    {
        using var folder = new Folder();
        var file = folder.Write("list.loom.yaml", "- a\n- b\n");
        var called = Called.With("check", file);
        Assert.Equal(ExitCode.Unreadable, called.Exit);
        Assert.Contains($"{file}:1:1", called.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void No_line_is_wider_than_a_page() =>
        Assert.All(Called.Gallery.SelectMany(f => Called.With("check", f).Out.Split('\n')), line => Assert.InRange(new StringInfo(line).LengthInTextElements, 0, 100));
}

using Loomwright.Findings;

namespace Loomwright.Tests.ProjectFile;

/// <summary>The exact words of every finding the reader gives, one golden for a file full of slips.</summary>
public sealed class FindingsTests
{
    private static readonly string Folder = Path.Combine(Pages.Root(), "tests/Loomwright.Core.Tests/ProjectFile/corpus");

    [Theory]
    [InlineData("many-slips")]
    [InlineData("many-broken-lines")]
    public void Everything_wrong_is_told_at_once_each_at_its_place(string name)
    {
        var file = Written.File(File.ReadAllText(Path.Combine(Folder, name + ".yaml")));
        Assert.NotNull(file.Loom);
        Assert.False(file.IsComplete);
        Golden.Check($"file/{name}.txt", Written.Shown(file.Text, file.Findings));
    }

    [Fact]
    public void Numbers_and_names_of_the_owner_come_from_the_evidence_alone()
    {
        var file = Written.File(File.ReadAllText(Path.Combine(Folder, "many-slips.yaml")));
        Assert.All(file.Findings, f =>
        {
            Assert.All(f.Evidence, e => Assert.Contains("{" + e.Name + "}", f.WhatTemplate + f.WhyTemplate + f.DoTemplate, StringComparison.Ordinal));
            Assert.DoesNotContain("{", f.What + f.Why + f.Do, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData("loomwright: 2\nname: x\n", "version-unknown 1:13")]
    [InlineData("loomwright: one\nname: x\n", "version-unknown 1:13")]
    [InlineData("name: x\n", "version-missing 1:1")]
    [InlineData("", "version-missing 1:1")]
    public void A_file_of_another_version_or_none_gives_no_loom(string content, string expected)
    {
        var file = Written.File(content);
        Assert.Null(file.Loom);
        Assert.Equal([expected], Written.Codes(file.Text, file.Findings));
        Assert.Equal(Severity.Stop, file.Findings[0].Severity);
    }
}

namespace Loomwright.Tests;

/// <summary>Malformed designs, as the reader's own tests keep them, through the whole program.</summary>
public sealed class CorpusTests
{
    [Fact]
    public void A_malformed_design_never_shows_a_fault_of_ours()
    {
        var files = Directory.GetFiles(Path.Combine(Repository.Root, "tests/Loomwright.Core.Tests/ProjectFile/corpus"), "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
        Assert.True(files.Count >= 40);
        Assert.All(files, file => Assert.InRange(Called.With("check", file).Exit, ExitCode.Answered, ExitCode.Unreadable));
        Assert.All(files, file => Assert.InRange(Called.With("try", file).Exit, ExitCode.Answered, ExitCode.Unreadable));
        Assert.All(files, file => Assert.InRange(Called.With("list", "faults", file).Exit, ExitCode.Answered, ExitCode.Unreadable));
        Assert.All(files, file => Assert.InRange(Called.With("draw", file, "--trials", "1").Exit, ExitCode.Answered, ExitCode.Unreadable));
        Assert.All(files, file => Assert.InRange(Called.With("plan", file).Exit, ExitCode.Answered, ExitCode.Unreadable));
    }
}

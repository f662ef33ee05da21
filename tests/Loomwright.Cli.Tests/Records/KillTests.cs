using Loomwright.Killing;

namespace Loomwright.Tests.Records;

public sealed class KillTests
{
    // Each start works its plan out anew before it keeps anything; what is kept does not depend on how large that is.
    private const string Small = "examples/gallery/lamp-reversed.loom.yaml";

    [Fact]
    public async Task Of_twenty_kills_while_answers_are_handed_over_none_loses_what_was_said_to_be_kept()
    {
        using var folder = new Folder();
        var killed = await Kills.Run(Path.Combine(AppContext.BaseDirectory, "loomwright.dll"), Repository.Read(Small), folder.Path, 20, 1, stop: TestContext.Current.CancellationToken);
        Assert.Equal((20, 0, 0, 0, true), (killed.Kills, killed.Lost, killed.Missing, killed.Doubled, killed.DesignWhole));
        Assert.True(killed.SaidKept > killed.Kills, killed.ToString());
    }
}

using Loomwright.Output;

namespace Loomwright.Tests.Verbs;

public sealed class LanTests
{
    [Fact]
    public void An_address_this_machine_does_not_have_is_said()
    {
        var called = Called.With("serve", "examples", "--lan", "--address", "203.0.113.7");
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.Contains("--address 203.0.113.7: this machine has no such address", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_square_holds_the_link_with_a_quiet_edge_and_three_corners()
    {
        var rows = Square.Of("http://192.168.1.20:5080/in/0123456789abcdef").Split('\n');
        Assert.All(rows, row => Assert.Equal(rows[0].Length, row.Length));
        Assert.Equal(new string('█', rows[0].Length), rows[0]);
        Assert.StartsWith("████ ▄▄▄▄▄ █", rows[2], StringComparison.Ordinal);
        Assert.EndsWith("█ ▄▄▄▄▄ ████", rows[2], StringComparison.Ordinal);
        Assert.StartsWith("████▄▄▄▄▄▄▄█", rows[^3], StringComparison.Ordinal);
    }
}

namespace Loomwright.Tests.Verbs;

public sealed class FixTests
{
    private static readonly string Reversed = Repository.Read("examples/gallery/lamp-reversed.loom.yaml");

    [Fact]
    public void A_fix_is_written_with_its_lines_before_and_after_and_the_check_then_finds_nothing()
    {
        using var folder = new Folder();
        var file = folder.Write("reversed.loom.yaml", Reversed);
        var called = Called.With("check", file, "--fix", "exchange-tail-lamp");

        Assert.Equal(ExitCode.Answered, called.Exit);
        Assert.Contains("-     to: tail lamp.-\n+     to: tail lamp.+\n", called.Out, StringComparison.Ordinal);
        Assert.Contains("0 stop, 0 look", called.Out, StringComparison.Ordinal);
        Assert.Equal(
            Reversed.Replace("to: tail lamp.-", "to: tail lamp.+", StringComparison.Ordinal).Replace("from: tail lamp.+", "from: tail lamp.-", StringComparison.Ordinal),
            File.ReadAllText(file));
    }

    [Theory]
    [InlineData("reversed.loom.yaml", "exchange-tail-lamb", ExitCode.WrongUsage, "Did you mean exchange-tail-lamp?")]
    [InlineData("reversed.yaml", "exchange-tail-lamp", ExitCode.Unreadable, "nothing was written")]
    public void An_id_that_is_not_offered_and_a_file_of_another_ending_get_nothing_written_and_are_told_why(string name, string id, int exit, string told)
    {
        using var folder = new Folder();
        var file = folder.Write(name, Reversed);
        var called = Called.With("check", file, "--fix", id);

        Assert.Equal(exit, called.Exit);
        Assert.Contains(told, called.Error, StringComparison.Ordinal);
        Assert.Equal(Reversed, File.ReadAllText(file));
    }

    [Fact]
    public void A_machine_is_told_what_was_written_and_what_is_offered()
    {
        using var folder = new Folder();
        var file = folder.Write("reversed.loom.yaml", Reversed);
        Assert.Contains("\"id\": \"exchange-tail-lamp\"", Called.With("check", file, "--json").Out, StringComparison.Ordinal);
        Assert.Contains("\"title\": \"Exchange the wires on tail lamp.+ and tail lamp.-\"", Called.With("check", file, "--fix", "exchange-tail-lamp", "--json").Out, StringComparison.Ordinal);
    }
}

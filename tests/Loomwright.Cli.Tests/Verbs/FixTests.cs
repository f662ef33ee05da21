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

    [Fact]
    public void An_id_that_is_not_offered_writes_nothing_and_says_which_are()
    {
        using var folder = new Folder();
        var file = folder.Write("reversed.loom.yaml", Reversed);
        var called = Called.With("check", file, "--fix", "exchange-tail-lamb");

        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.Contains("Did you mean exchange-tail-lamp?", called.Error, StringComparison.Ordinal);
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

    [Fact]
    public void A_file_of_another_ending_is_not_written_to()
    {
        using var folder = new Folder();
        var file = folder.Write("reversed.yaml", Reversed);
        var called = Called.With("check", file, "--fix", "exchange-tail-lamp");

        Assert.Equal(ExitCode.Unreadable, called.Exit);
        Assert.Contains("nothing was written", called.Error, StringComparison.Ordinal);
        Assert.Equal(Reversed, File.ReadAllText(file));
    }
}

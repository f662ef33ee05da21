namespace Loomwright.Tests;

public sealed class CommandLineTests
{
    private static readonly string[] Verbs = ["check", "try", "list", "plan", "print", "walk", "size", "draw", "contacts", "trouble", "record", "explain", "serve"];

    public static TheoryData<string> VerbNames => [.. Verbs];

    [Theory]
    [MemberData(nameof(VerbNames))]
    public void Help_of_a_verb_shows_an_example(string verb)
    {
        var called = Called.With(verb, "--help");
        Assert.Equal(ExitCode.Answered, called.Exit);
        Assert.Contains($"EXAMPLES:\n    loomwright {verb}", called.Out, StringComparison.Ordinal);
        Golden.Check($"help/{verb}.txt", called.Out);
    }

    [Fact]
    public void Help_names_every_verb()
    {
        var called = Called.With("--help");
        Assert.All(Verbs, verb => Assert.Contains($"\n    {verb} ", called.Out, StringComparison.Ordinal));
    }

    [Fact]
    public void The_page_about_commands_names_every_verb_and_exit_code()
    {
        var page = Repository.Read("docs/commands.md");
        Assert.All(Verbs, verb => Assert.Contains($"\n## {verb}\n", page, StringComparison.Ordinal));
        Assert.All(["0", "1", "2", "3", "70", "130"], code => Assert.Contains($"\n| {code} |", page, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("chek", "There is no verb chek. Did you mean check? The verbs are: check, try, list, plan, print, walk, size, draw, contacts, trouble, record, explain, serve.\n")]
    [InlineData("fly", "There is no verb fly. The verbs are: check, try, list, plan, print, walk, size, draw, contacts, trouble, record, explain, serve.\n")]
    public void A_verb_there_is_not_gets_the_nearest_and_the_list(string verb, string message)
    {
        var called = Called.With(verb);
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.Equal(message, called.Error);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("check", Called.Bench, "--bogus")]
    [InlineData("check", Called.Bench, "more")]
    [InlineData("serve", "--port", "many")]
    [InlineData("serve", "--port", "70000")]
    [InlineData("serve", "no such folder")]
    [InlineData("--port", "70000")]
    [InlineData("try", Called.Bench, "--set")]
    [InlineData("try", Called.Bench, "--fault")]
    [InlineData("try", Called.Bench, "--", "--set", "lock=riding")]
    [InlineData("explain", "no-such-finding")]
    [InlineData("plan", Called.Bench, "--supply", "much")]
    [InlineData("plan", Called.Bench, "--supply", "500A")]
    [InlineData("plan", Called.Bench, "--on-table", "no such part")]
    [InlineData("walk", Called.Bench, "--limit", "0")]
    [InlineData("walk", Called.Bench, "--time", "soon")]
    [InlineData("draw", Called.Bench, "--out", "bike.png")]
    [InlineData("draw", Called.Bench, "--trials", "0")]
    [InlineData("draw", Called.Bench, "--trials", "1", "--out", "no/such/folder/bike.svg")]
    [InlineData("draw", Called.Bench, "--function", "no such function")]
    public void A_call_that_has_no_answer_is_wrong_usage_said_on_the_error_side(params string[] call)
    {
        var called = Called.With(call);
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.NotEmpty(called.Error);
        Assert.Empty(called.Out);
    }

    [Fact]
    public void A_stop_from_the_keyboard_ends_with_its_own_code()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Equal(ExitCode.Stopped, Called.With(stop.Token, "try", Called.Bench).Exit);
    }

    [Fact]
    public async Task A_fault_of_our_own_says_so_in_one_sentence_without_a_stack()
    {
        using var error = new StringWriter();
        using var broken = new Broken();
        var exit = await CommandLine.Run(["explain", "unfused-feed", "--json"], Output.Screen.On(broken, error, piped: true), TestContext.Current.CancellationToken);
        Assert.Equal(ExitCode.OwnFault, exit);
        Assert.StartsWith("This is a fault in loomwright, not in your file", error.ToString(), StringComparison.Ordinal);
        Assert.Single(error.ToString().TrimEnd().Split('\n'));
    }

    private sealed class Broken : StringWriter
    {
        public override void WriteLine(string? value) => throw new InvalidOperationException("broken on purpose");
    }
}

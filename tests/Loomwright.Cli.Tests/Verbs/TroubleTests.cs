namespace Loomwright.Tests.Verbs;

public sealed class TroubleTests
{
    private const string Dark = "lock=riding, front brake=pressed: rear cluster stop=dark, box.X4=on";

    [Fact]
    public void From_one_dark_lamp_it_tells_causes_and_what_to_ask_next() =>
        Golden.Check("trouble/stop-dark.txt", Called.With("trouble", Called.Bench, "--saw", Dark).Golden);

    [Fact]
    public void With_what_else_lights_and_a_reading_it_tells_the_wire() => Golden.Check("trouble/stop-feed.txt", Called.With(
        "trouble", Called.Bench, "--saw", Dark, "--saw", "lock=riding: rear cluster tail=lit",
        "--read", "lock=riding, front brake=pressed: rear cluster.stop to battery.- = 0,02 V", "--read", "lock=riding, front brake=pressed: box.X4 to battery.- = 12,6").Golden);

    [Fact]
    public void A_session_goes_on_after_a_repair()
    {
        using var folder = new Folder();
        var session = folder.Write("search.jsonl", """
            {"do": "lock=riding, front brake=pressed", "answer": "rear cluster stop=dark, rear cluster tail=lit, box.X4=on"}
            {"do": "lock=riding, front brake=pressed", "between": ["rear cluster.stop", "battery.-"], "reading": "0,02", "unit": "V"}
            {"do": "lock=riding, left button=pressed", "answer": "not sure"}
            {"mended": "renew stop lamp feed and both its ends"}
            {"do": "lock=riding, left button=pressed", "answer": "left rear indicator=dark, rear cluster tail=lit"}
            """);
        Golden.Check("trouble/second.txt", Called.With("trouble", Called.Bench, "--session", session).Golden);
    }

    [Fact]
    public void A_look_at_the_thing_itself_tells_the_neighbouring_terminal() => Golden.Check("trouble/neighbour.txt", Called.With(
        "trouble", Called.Bench, "--saw", Dark, "--found", "terminals of rear cluster: stop lamp feed sits on rear cluster.plate").Golden);

    [Fact]
    public void A_told_case_shows_where_its_cause_stands_before_and_after_the_questions() =>
        Golden.Check("trouble/case-44.txt", Called.With("trouble", "--case", Path.Combine(Repository.Root, "tests/published/cases/44")).Golden);

    [Fact]
    public void A_folder_that_holds_no_case_is_told_and_so_is_a_verb_with_nothing_to_read()
    {
        var called = Called.With("trouble", "--case", Path.Combine(Repository.Root, "docs"));
        Assert.Equal(ExitCode.Unreadable, called.Exit);
        Assert.Contains("it is no folder with one file in it that ends in .case.yaml", called.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.WrongUsage, Called.With("trouble").Exit);
        Assert.Equal(ExitCode.WrongUsage, Called.With("trouble", Called.Bench, "--case", "x").Exit);
    }

    [Theory]
    [InlineData("--found terminals of bex: as it should be: terminals of bex: there is no such check; did you mean terminals of box?", "--found", "terminals of bex: as it should be")]
    [InlineData("--found terminals of box: all gone: all gone: that cannot be found there; write one of:", "--found", "terminals of box: all gone")]
    [InlineData("--saw lock=riding: tail=dark: tail: nothing that can be seen is called so; write one of:", "--saw", "lock=riding: tail=dark")]
    [InlineData("--read lock=riding: box.X44 to battery.- = 12 V: box.X44: no wire ends there; did you mean box.X4?", "--read", "lock=riding: box.X44 to battery.- = 12 V")]
    [InlineData("--read lock=riding: box.X4 to battery.- = full: full: it does not begin with a number; write a number with its unit", "--read", "lock=riding: box.X4 to battery.- = full")]
    public void What_cannot_be_read_is_named_with_the_cure(string told, params string[] args)
    {
        var called = Called.With(["trouble", Called.Bench, .. args]);
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.StartsWith(told, called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_of_a_session_that_cannot_be_read_is_named()
    {
        using var folder = new Folder();
        var called = Called.With("trouble", Called.Bench, "--session", folder.Write("search.jsonl", "{\"did\": 1}"));
        Assert.Equal(ExitCode.Unreadable, called.Exit);
        Assert.Contains(":1:1: this is no answer; write {\"do\"", called.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_repair_nobody_offered_is_named_with_its_line_as_all_that_cannot_be_read()
    {
        using var folder = new Folder();
        var session = folder.Write("search.jsonl", "{\"do\": \"lock=riding\", \"answer\": \"rear cluster tail=dark\"}\n{\"mended\": \"renew everything\"}\n");
        var called = Called.With("trouble", Called.Bench, "--session", session);
        Assert.StartsWith($"{session}:2:1: there is no repair", called.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(ExitCode.Unreadable, called.Exit);
    }

    [Theory]
    [InlineData("grade: C", "grade: D", "2:8")]
    [InlineData("left stop lamp: dark", "left step lamp: dark", "12:7")]
    public void What_is_wrong_in_a_told_case_is_said_with_its_line_and_column(string was, string now, string at)
    {
        using var folder = new Folder();
        folder.Write("44.loom.yaml", Repository.Read("tests/published/cases/44/44.loom.yaml"));
        var path = folder.Write("44.case.yaml", Repository.Read("tests/published/cases/44/44.case.yaml").Replace(was, now, StringComparison.Ordinal));
        var called = Called.With("trouble", "--case", folder.Path);
        Assert.StartsWith($"{path}:{at}: ", called.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Unreadable, called.Exit);
    }
}

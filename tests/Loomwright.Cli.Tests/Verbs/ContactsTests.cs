namespace Loomwright.Tests.Verbs;

public sealed class ContactsTests
{
    private static readonly string[] Lock = ["contacts", "--leads", "red, brown, black", "--positions", "off, on, lights"];

    [Fact]
    public void Without_a_reading_it_tells_the_first_pair_to_touch() => Golden.Check("contacts/start.txt", Called.With(Lock).Golden);

    [Fact]
    public void Read_to_the_end_it_tells_the_table_and_every_short() => Golden.Check("contacts/measured.txt", Read("""
        {"position": "off", "between": ["red", "brown"], "heard": "nothing"}
        {"position": "off", "between": ["red", "black"], "heard": "nothing"}
        {"position": "off", "between": ["brown", "black"], "heard": "nothing"}
        {"position": "on", "between": ["red", "brown"], "heard": "0,4 ohm"}
        {"position": "on", "between": ["red", "black"], "heard": "100 ohm"}
        {"position": "lights", "between": ["red", "brown"], "heard": "beep"}
        {"position": "lights", "between": ["brown", "black"], "heard": "beep"}
        """).Golden);

    [Fact]
    public void A_lamp_of_two_filaments_is_told_by_its_ohms()
    {
        using var folder = new Folder();
        var file = folder.Write("lamp.jsonl", """
            {"between": ["white", "black"], "heard": "0.5 ohm"}
            {"between": ["white", "blue"], "heard": "2.6 ohm"}
            {"between": ["black", "blue"], "heard": "2.1 ohm"}
            """);
        Golden.Check("contacts/lamp.txt", Called.With("contacts", "--lamp", "--leads", "white, black, blue", "--readings", file).Golden);
    }

    [Theory]
    [InlineData("beep", ":1:1: this is no reading; write {\"position\": \"off\", \"between\": [\"red\", \"brown\"], \"heard\": \"beep\"}")]
    [InlineData("""{"position": "onn", "between": ["red", "brown"], "heard": "beep"}""", ":1:1: There is no position onn. Did you mean on? The positions are: off, on, lights.")]
    [InlineData("""{"position": "on", "between": ["red", "red"], "heard": "beep"}""", ":1:1: “between” names two different leads; write")]
    [InlineData("""{"position": "on", "between": ["red", "brown"], "heard": "quiet"}""", ":1:1: “heard” is beep, nothing or what the meter shows, 100 ohm: it does not begin with a number")]
    public void A_line_that_cannot_be_read_is_named_with_the_cure(string line, string told)
    {
        var called = Read(line);
        Assert.Equal(ExitCode.Unreadable, called.Exit);
        Assert.Contains(told, called.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--leads: name 2 to 8, a comma between; 1 are named.\n", "--leads", "red", "--positions", "off, on")]
    [InlineData("--leads: two have the same name; give each its own.\n", "--leads", "red, Red", "--positions", "off, on")]
    [InlineData("--positions: a lamp has none; leave it out.\n", "--lamp", "--leads", "red, brown", "--positions", "off, on")]
    public void What_cannot_be_worked_out_is_said(string told, params string[] args)
    {
        var called = Called.With(["contacts", .. args]);
        Assert.Equal((ExitCode.WrongUsage, told), (called.Exit, called.Error));
    }

    private static Called Read(string readings)
    {
        using var folder = new Folder();
        return Called.With([.. Lock, "--readings", folder.Write("lock.jsonl", readings)]);
    }
}

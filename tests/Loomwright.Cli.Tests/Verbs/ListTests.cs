using System.Text.Json;

namespace Loomwright.Tests.Verbs;

public sealed class ListTests
{
    [Theory]
    [InlineData("parts")]
    [InlineData("controls")]
    [InlineData("faults")]
    [InlineData("kinds")]
    public void A_list_is_told(string what)
    {
        string[] call = what == "kinds" ? ["list", what] : ["list", what, Called.Bench];
        Golden.Check($"list/{what}.txt", Called.With(call).Golden);
        Golden.Check($"list/{what}.json", SixFigures.Of(Called.With([.. call, "--json"]).Out));
    }

    [Fact]
    public void A_kind_is_told_by_its_name() =>
        Golden.Check("list/kinds-lamp.txt", Called.With("list", "kinds", "Lamp").Golden);

    [Fact]
    public void A_listed_fault_of_each_form_can_be_put_in_by_its_id()
    {
        var faults = Answered.Read(Called.With("list", "faults", Called.Bench, "--json")).GetProperty("faults").EnumerateArray();
        Assert.All(faults, f => Assert.Equal((JsonValueKind.Null, JsonValueKind.Null), (f.GetProperty("harmful").ValueKind, f.GetProperty("class").ValueKind)));
        var firsts = faults.DistinctBy(f => f.GetProperty("kind").GetString()).Select(f => f.GetProperty("id").GetString()!).ToList();
        Assert.Equal(11, firsts.Count);
        Assert.All(firsts, id => Assert.InRange(Called.With("try", Called.Bench, "--fault", id).Exit, ExitCode.Answered, ExitCode.Look));
    }

    [Fact]
    public void What_a_fault_can_do_is_worked_out_when_it_is_asked_for()
    {
        var faults = Answered.Read(Called.With("list", "faults", Called.Bench, "--json", "--effects")).GetProperty("faults").EnumerateArray().ToDictionary(f => f.GetProperty("id").GetString()!, StringComparer.Ordinal);
        Assert.False(faults["open: stop lamp feed"].GetProperty("harmful").GetBoolean());
        Assert.Contains(faults.Values, f => f.GetProperty("harmful").GetBoolean());

        // A stop lamp is dark for want of its feed as for want of itself; all else is as it was.
        Assert.Equal(faults["open: stop lamp feed"].GetProperty("class").GetInt32(), faults["dead: rear cluster.stop"].GetProperty("class").GetInt32());
        Assert.All(faults.Values, f => Assert.InRange(f.GetProperty("class").GetInt32(), 0, faults.Count));
    }

    [Fact]
    public void A_list_there_is_not_names_those_there_are()
    {
        var called = Called.With("list", "control", Called.Bench);
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.Equal("There is no list control. Did you mean controls? The lists are: parts, controls, faults, kinds.\n", called.Error);
    }

    [Fact]
    public void A_list_of_parts_asks_for_the_design()
    {
        var called = Called.With("list", "parts");
        Assert.Equal(ExitCode.WrongUsage, called.Exit);
        Assert.Equal("Name the design: loomwright list parts FILE.\n", called.Error);
    }
}

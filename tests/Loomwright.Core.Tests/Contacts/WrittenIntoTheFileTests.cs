using Loomwright.Contacts;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.Contacts;

public sealed class WrittenIntoTheFileTests
{
    private const string Bike = """
        loomwright: 1
        name: Sandpiper
        parts:
          battery:
            kind: battery
            chemistry: agm
            capacity: 8 Ah
          lock:      # from the old loom
            kind: switch
            terminals: [red, brown]
            positions:
              "off": []
              "on": [[red, brown]]
        wires:
          - from: battery.+
            to: lock.red
            size: 1 mm2
            length: 1 m
        """;

    [Fact]
    public void A_measured_table_takes_the_place_of_the_one_in_the_file_and_comments_stay()
    {
        var edited = Assert.IsType<EditOutcome.Edited>(Read(Bike).Write("Lock", Measured("red", "brown", "black")).Outcome);
        Assert.Contains("lights: [[red, brown], [brown, black]]", edited.Text.Content, StringComparison.Ordinal);
        Assert.Contains("lock:      # from the old loom", edited.Text.Content, StringComparison.Ordinal);
        Assert.True(Read(edited.Text.Content).IsComplete);
    }

    [Fact]
    public void A_new_switch_is_added_below_the_other_parts()
    {
        var edited = Assert.IsType<EditOutcome.Edited>(Read(Bike).Write("light switch", Measured("red", "brown", "black")).Outcome);
        var part = Read(edited.Text.Content).Loom!.Part("light switch")!;
        Assert.Equal("switch", part.Kind);
        Assert.StartsWith(Bike[..Bike.IndexOf("wires:", StringComparison.Ordinal)], edited.Text.Content, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_whose_leads_the_wires_do_not_know_is_refused_and_nothing_changes()
    {
        var refused = Assert.IsType<EditOutcome.Refused>(Read(Bike).Write("lock", Measured("1", "2", "3")).Outcome);
        Assert.Contains("red", refused.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_battery_gets_no_contact_table() =>
        Assert.Contains("is a battery", Assert.IsType<EditOutcome.Refused>(Read(Bike).Write("battery", Measured("red", "brown", "black")).Outcome).What, StringComparison.Ordinal);

    [Fact]
    public void A_table_that_is_only_likely_is_never_written() =>
        Assert.Throws<InvalidOperationException>(() => Read(Bike).Write("lock", UnmarkedSwitch.Of(["red", "brown"], ["off", "on"], [])));

    private static Bike Read(string text) => Loomwright.Bike.Read(new SourceText("a.loom.yaml", text));

    private static UnmarkedSwitch Measured(string a, string b, string c) => UnmarkedSwitch.Of(
        [a, b, c],
        ["off", "on", "lights"],
        [
            new(0, 0, 1, Heard.Nothing), new(0, 0, 2, Heard.Nothing), new(0, 1, 2, Heard.Nothing),
            new(1, 0, 1, Heard.Beep), new(1, 0, 2, Heard.Nothing),
            new(2, 0, 1, Heard.Beep), new(2, 1, 2, Heard.Beep),
        ]);
}

using Loomwright.ProjectFile;

namespace Loomwright.Tests.ProjectFile;

public sealed class WireNamesTests
{
    private const string Bike = """
        loomwright: 1
        name: Kittiwake
        parts:
          horn:
            kind: horn
          fuse:
            kind: fuse
            rating: 5 A
          bar:
            kind: ground stud
        wires:
          - from: fuse.2
            to: horn.1
            size: 1 mm2
            length: 1 m
          - from: fuse.2
            to: horn.1
            size: 1 mm2
            length: 1 m
          - name: horn ground
            from: horn.2
            to: bar
            size: 1 mm2
            length: 1 m

        """;

    private static DesignFile After(DesignFile file, params Edit[] edits) => DesignFile.Read(Assert.IsType<EditOutcome.Edited>(file.Edit(edits)).Text);

    private static string[] NamesIn(DesignFile file) => [.. file.Loom!.Wires.Select(w => w.Name)];

    [Fact]
    public void A_wire_without_a_name_is_called_by_its_ends_and_a_second_one_is_counted() =>
        Assert.Equal(["fuse 2 to horn 1", "fuse 2 to horn 1 (2)", "horn ground"], NamesIn(Written.File(Bike)));

    [Fact]
    public void Moving_an_end_writes_the_old_name_down_on_every_wire_that_would_lose_it()
    {
        var file = Written.File(Bike);
        var moved = After(file, new Edit.Replace(file.WirePath("fuse 2 to horn 1")!.Key("to"), Node.Word("horn.2")));
        Assert.Equal(NamesIn(file), NamesIn(moved));
        Assert.All(moved.Loom!.Wires, w => Assert.False(w.NameIsDerived));
        Assert.Contains("  - name: fuse 2 to horn 1\n    from: fuse.2\n    to: horn.2\n", moved.Text.Content, StringComparison.Ordinal);
    }

    [Fact]
    public void Removing_the_first_of_two_leaves_the_second_its_name()
    {
        var file = Written.File(Bike);
        Assert.Equal(["fuse 2 to horn 1 (2)", "horn ground"], NamesIn(After(file, new Edit.Remove(file.WirePath("fuse 2 to horn 1")!))));
    }

    [Fact]
    public void An_edit_that_moves_no_end_writes_no_names_down()
    {
        var file = Written.File(Bike);
        var thicker = After(file, new Edit.Replace(file.WirePath("fuse 2 to horn 1")!.Key("size"), Node.Word("1.5 mm2")));
        Assert.Equal(Bike.Replace("size: 1 mm2\n    length: 1 m\n  - from", "size: 1.5 mm2\n    length: 1 m\n  - from", StringComparison.Ordinal), thicker.Text.Content);
    }
}

using System.Xml.Linq;
using Loomwright.Design;
using Loomwright.Drawing;

namespace Loomwright.Tests.Drawing;

/// <summary>What a page takes hold of: every wire, part, terminal and light of a sheet, by its name in the design.</summary>
public class HandlesTests
{
    public static TheoryData<string> Bikes => ["kittiwake-bench", "sandpiper", "kittiwake", "turnstone"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Every_wire_part_terminal_and_light_of_the_bike_can_be_found_on_the_overview(string bike)
    {
        var loom = Read(bike);
        var svg = Drawn(Sheets.Overview(loom, 1));
        Assert.Equal(Sorted(loom.Wires.Select(w => w.Name)), Sorted(Values(svg, "data-wire").Distinct()));
        Assert.Equal(Sorted(loom.Parts.Select(p => p.Name)), Sorted(With(svg, "data-kind").Select(e => e.Attribute("data-part")!.Value)));
        Assert.Equal(
            Sorted(loom.Parts.SelectMany(p => Bike.Model(p).Terminals.Select(t => $"{p.Name}|{t.Mark}"))),
            Sorted(With(svg, "data-terminal").Select(e => $"{e.Attribute("data-part")!.Value}|{e.Attribute("data-terminal")!.Value}")));
        Assert.Equal(
            Sorted(loom.Parts.SelectMany(p => Bike.Model(p).Sights.Select(s => $"{p.Name}|{s.Name}"))),
            Sorted(With(svg, "data-sight").Select(e => $"{e.Attribute("data-part")!.Value}|{e.Attribute("data-sight")!.Value}")));
        Assert.Equal(
            Sorted(loom.Parts.SelectMany(p => (Bike.Model(p).Controller?.Lights ?? []).Select(l => $"{p.Name}|{l.Terminal}"))),
            Sorted(With(svg, "data-light").Select(e => $"{e.Attribute("data-part")!.Value}|{e.Attribute("data-light")!.Value}")));
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Every_wire_ends_on_the_pins_of_its_two_terminals(string bike)
    {
        var loom = Read(bike);
        var scene = Sheets.Overview(loom, 1);
        Assert.All(scene.Strands, s =>
        {
            var wire = loom.Wire(s.Wire)!;
            Assert.Contains(s.Path[0], Pin(wire.From).Ends);
            Assert.Contains(s.Path[^1], Pin(wire.To).Ends);
        });
        Assert.All(scene.Pins, p => Assert.All(p.Ends, e => Assert.InRange(e.Y, p.Area.Y, p.Area.Bottom)));

        Pin Pin(TerminalRef end) => scene.Pins.Single(p => new TerminalRef(p.Part, p.Terminal) == end);
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void The_corner_of_every_box_is_even_so_that_it_can_be_written_down(string bike) =>
        Assert.All(Sheets.Overview(Read(bike), 1).Cells, c => Assert.Equal((0, 0), (c.Area.X % 2, c.Area.Y % 2)));

    [Fact]
    public void A_line_of_a_function_ends_on_pins_of_its_stations()
    {
        var scene = Sheets.Function(Examples.Kittiwake, Examples.Kittiwake.Functions.Single(f => f.Name == "stop lamp"));
        var ends = scene.Pins.SelectMany(p => p.Ends).ToHashSet();
        Assert.All(scene.Strands, s => Assert.True(ends.Contains(s.Path[0]) && ends.Contains(s.Path[^1]), s.Wire));
        Assert.Contains(scene.Lights, l => l is { Part: "rear cluster", Sight: "stop" });
    }

    [Fact]
    public void No_rule_of_the_style_reaches_beyond_the_drawing()
    {
        var style = Drawn(Sheets.Overview(Examples.Kittiwake, 1)).Descendants().Single(e => e.Name.LocalName == "style").Value;
        var selectors = style.Replace("@media print{", "", StringComparison.Ordinal).Split('}')
            .Where(r => r.Contains('{', StringComparison.Ordinal))
            .SelectMany(r => r[..r.IndexOf('{', StringComparison.Ordinal)].Split(','))
            .Select(s => s.Trim())
            .ToList();
        Assert.NotEmpty(selectors);
        Assert.All(selectors, s => Assert.StartsWith(".loom", s, StringComparison.Ordinal));
    }

    [Fact]
    public void The_list_of_sheets_is_the_order_of_their_pages()
    {
        var sheets = Sheets.Of(Examples.Kittiwake);
        Assert.Equal(Enumerable.Range(1, sheets.Length), sheets.Select(s => Sheets.One(Examples.Kittiwake, s.Kind, s.Of, 1)!.Page));
        Assert.Null(Sheets.One(Examples.Kittiwake, SheetKind.Function, "no such thing"));
    }

    private static Loom Read(string bike) => Examples.Read($"examples/{bike}/{bike}.loom.yaml");

    private static XDocument Drawn(Scene scene) => XDocument.Parse(Svg.Write(scene));

    private static IEnumerable<XElement> With(XDocument svg, string attribute) => svg.Descendants().Where(e => e.Attribute(attribute) is not null);

    private static IEnumerable<string> Values(XDocument svg, string attribute) => With(svg, attribute).Select(e => e.Attribute(attribute)!.Value);

    private static IEnumerable<string> Sorted(IEnumerable<string> words) => words.Order(StringComparer.Ordinal);
}

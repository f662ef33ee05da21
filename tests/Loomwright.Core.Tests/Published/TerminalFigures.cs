using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Sizing;
using static Loomwright.Tests.Parts.Given;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Published;

/// <summary>Marks, rings and contacts, tests/published/08-*.csv.</summary>
public sealed class TerminalFigures
{
    private const string Marks = "08-din72552-terminals.csv";
    private const string Where = "docs/terminal-marks.md";
    private static readonly List<string[]> Told = [.. Pages.Table(Where, "Marks")];

    [Fact]
    public void Every_mark_of_DIN_72552_is_on_the_page_of_marks() =>
        Each(Marks, PublishedTable.Read(Marks).Rows, _ => false, row => Assert.Single(Told, t => t[0] == row["terminal"]));

    [Fact]
    public void A_part_that_carries_a_mark_of_DIN_72552_unasked_is_named_beside_it()
    {
        var carried =
            from kind in Kinds.All
            from settings in new[] { ImmutableArray<(string, Value)>.Empty, [("contacts", Word("changeover"))], [("works", Word("three terminal"))] }
            let terminals = kind.Build(new Part("it", kind.Name, null, Settings([.. settings]))).Terminals
            from terminal in terminals

            // 1 and 2 only number two ends.
            where Told.Any(t => t[0] == terminal.Mark) && !(terminal.Mark == "1" && terminals.Any(t => t.Mark == "2"))
            select (terminal.Mark, kind.Name);
        Assert.Equal(
            carried.Distinct().Order(),
            Told.SelectMany(t => t[2].Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(kind => (t[0], kind))).Order());
    }

    [Fact]
    public void A_part_of_ours_uses_its_marks_as_DIN_72552_has_them() =>
        Each(Marks, PublishedTable.Read(Marks).Rows, _ => false, row =>
        {
            switch (row["terminal"])
            {
                case "1":
                    Assert.Contains(Model("ignition coil").Elements, e => (e.From, e.To) == ("15", "1"));
                    break;
                case "15":
                    Assert.Equal(Role.Plus, RoleOf(Model("ignition coil"), "15"));
                    break;
                case "30" or "45":
                    Assert.All(["starter relay", "solenoid"], kind => Assert.Contains(Model(kind).Elements, e => e.Name == "contact" && (e.From, e.To) == ("30", "45")));
                    break;
                case "50":
                    Assert.All(["starter relay", "solenoid"], kind => Assert.Contains(Model(kind).Elements, e => (e.From, e.To) == ("50", "31")));
                    break;
                case "31":
                    Assert.Equal(Role.Minus, RoleOf(Model("flasher", ("works", Word("three terminal"))), "31"));
                    break;
                case "49" or "49a":
                    Assert.Contains(Model("flasher", ("works", Word("load sensing"))).Elements, e => (e.From, e.To) == ("49", "49a"));
                    break;
                case "85" or "86":
                    Assert.Contains(Model("relay").Elements, e => e.Name == "coil" && (e.From, e.To) == ("86", "85"));
                    Assert.Equal((Role.Plus, Role.Minus), (RoleOf(Model("relay"), "86"), RoleOf(Model("relay"), "85")));
                    break;
                case "87":
                    Assert.Equal(new Gate.ByRelay("coil", WhenPulledIn: true), ContactTo("87"));
                    break;
                case "87a":
                    Assert.Equal(new Gate.ByRelay("coil", WhenPulledIn: false), ContactTo("87a"));
                    break;
                case "B+":
                    Assert.Equal(Role.Plus, RoleOf(Model("alternator"), "B+"));
                    break;
                case var other:
                    // No part of ours carries it unasked; the page says what it stands for.
                    Assert.Equal("", Assert.Single(Told, t => t[0] == other)[2]);
                    break;
            }
        });

    [Fact]
    public void A_ring_is_listed_with_its_bolt_and_torque() =>
        Each("08-ring-terminals.csv", PublishedTable.Read("08-ring-terminals.csv").Rows, _ => false, row =>
        {
            var bolt = Ring.BoltOf($"ring {row["bolt"]}");
            Assert.Contains(new Ring(row.Number("wire_area_mm2"), bolt!.Value, row.Number("torque_N_m")), Ring.All);
            Assert.Equal(row.Number("torque_N_m"), Ring.Torque(bolt.Value));
            Assert.Contains(FormattableString.Invariant($"{row["bolt"]} {row.Number("torque_N_m"):0.0} N·m"), Pages.Read("docs/findings/rings-unalike.md"), StringComparison.Ordinal);
        });

    [Theory]
    [InlineData("ring M6", 6)]
    [InlineData("Ring m10", 10)]
    [InlineData("ring", null)]
    [InlineData("screw M6", null)]
    [InlineData(null, null)]
    public void A_ring_is_known_by_its_bolt(string? end, int? bolt) => Assert.Equal(bolt, Ring.BoltOf(end));

    [Fact]
    public void Contacts_crimps_and_bonds_have_the_resistance_their_sources_give() =>
        Each("08-contact-resistance.csv", PublishedTable.Read("08-contact-resistance.csv").Rows, SaysMemory, row =>
        {
            var ohms = row.Number("value_ohm");
            switch (row["item"])
            {
                case var item when item.StartsWith("total connection, ", StringComparison.Ordinal):
                    Assert.Equal(ohms, Termination.Contact(double.Parse(item.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture)).Ohms);
                    break;
                case "good crimp, typical upper value":
                    Assert.Equal(ohms, Termination.Crimp.Ohms);
                    break;
                case "bond between aircraft parts, upper limit":
                    Assert.Equal(Mount.GoodOhms, ohms);
                    break;
                case "ground return path, satisfactory":
                    Assert.Equal(ohms, DropLimit.All.Single(l => l.Unit == DropUnit.Ohms).Limit);
                    break;
                default:
                    PublishedPage.SaysWhyNot("08-contact-resistance.csv", row["item"]);
                    break;
            }
        });

    private static Role RoleOf(Model model, string mark) => model.Terminals.Single(t => t.Mark == mark).Role;

    private static Gate? ContactTo(string mark) => Model("relay", ("contacts", Word("changeover"))).Elements.Single(e => (e.From, e.To) == ("30", mark)).Gate;
}

using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.ProjectFile;
using Loomwright.Text;
using static Loomwright.Tests.PublishedRows;

namespace Loomwright.Tests.Published;

/// <summary>Law and inspection, tests/published/06-rules-jurisdiction-dependent.csv: each row a rule tells of is told with its source, its country and its figures, a look only where it was read.</summary>
public sealed class LawFigures
{
    private const string File = "06-rules-jurisdiction-dependent.csv";

    [Fact]
    public void What_is_told_of_law_names_the_row_it_comes_from() =>
        Each(File, PublishedTable.Read(File).Rows, SaysMemory, row =>
        {
            switch (row["topic"], row["rule"])
            {
                case ("flash rate", "turn indicators, rate" or "variable-load flasher"):
                    Rates(Told(row, "flash-rate"), row);
                    break;
                case ("flash rate", "fixed-load flasher"):
                    Rates(Assert.Single(Rules.Check(Examples.Of(FixedLoad)), f => f.Code == "flash-rate"), row);
                    break;
                case ("flash rate", "on-time share"):
                    // Half on, half off (docs/models/flasher.md).
                    Assert.Contains("Half the time on", Pages.Read("docs/models/flasher.md"), StringComparison.Ordinal);
                    Assert.InRange(50, Ends(row).Least, Ends(row).Most);
                    break;
                case ("flash start", "first off within"):
                    // It begins lit, and at the slowest rate allowed half a flash is over in half a second.
                    Assert.True(30 / Number(Fact(Told("flash-rate", null), "least")) <= row.Number("value"));
                    break;
                case ("failure", var rule) when rule.StartsWith("one lamp fails", StringComparison.Ordinal):
                    Assert.All([FlasherLaw.LoadSensing, FlasherLaw.Clock], law => Assert.NotNull(Flasher(law).PerMinuteAt(1.75)));
                    break;
                case ("failure", var rule) when rule.StartsWith("outage must be shown", StringComparison.Ordinal):
                    Assert.NotEqual(Flasher(FlasherLaw.LoadSensing).PerMinuteAt(3.5), Flasher(FlasherLaw.LoadSensing).PerMinuteAt(1.75));
                    break;
                case ("failure", _):
                    Assert.Equal(Flasher(FlasherLaw.Clock).PerMinuteAt(3.5), Flasher(FlasherLaw.Clock).PerMinuteAt(1.75));
                    break;
                case ("emergency stop signal", "rate"):
                    var sign = Told("stop-lamp-flashes", null);
                    Assert.Contains(row["source"], sign.Why, StringComparison.Ordinal);
                    Assert.Equal((60 * Ends(row).Least, 60 * Ends(row).Most), (Number(Fact(sign, "slowest")), Number(Fact(sign, "fastest"))));
                    break;
                case ("stop lamp", var rule) when rule.Contains("if first used", StringComparison.Ordinal):
                    Assert.Equal(DateOnly.ParseExact(row["value"], "yyyy-MM-dd", CultureInfo.InvariantCulture).ToString("MMMM yyyy", CultureInfo.InvariantCulture), Fact(Told(row, "stop-lamp-from-one-brake"), "date"));
                    break;
                case var (topic, rule) when CodeOf(topic, rule) is { } code:
                    Told(row, code);
                    break;
                default:
                    PublishedPage.SaysWhyNot(File, $"{row["topic"]}, {row["rule"]}");
                    break;
            }
        });

    // The rule that tells a row whose figures are nothing more than that.
    private static string? CodeOf(string topic, string rule) => (topic, rule) switch
    {
        ("stop lamp", "worked by hand brake and foot brake") => "stop-lamp-from-one-brake",
        ("stop lamp", "steady burning") => "stop-lamp-flashes",
        ("stop lamp", _) => "stop-lamp-disturbed",
        ("indicators", _) when rule.StartsWith("go on and off", StringComparison.Ordinal) => "indicator-never-dark",
        ("hazard", _) => "hazard-needs-key",
        ("passing beam", _) => "headlamp-out-while-running",
        ("main beam", _) => "main-beam-untold",
        ("horn", _) => "horn-silent",
        _ => null,
    };

    // A 42 W load-sensing flasher of 80 a minute, in the USA.
    private const string FixedLoad = """
        loomwright: 1
        name: Kittiwake
        conditions: {country: USA}
        parts:
          battery: {kind: battery, chemistry: agm}
          fuse: {kind: fuse, rating: 5 A}
          flasher: {kind: flasher, works: load sensing, rate: 80}
          indicator switch: {kind: switch, terminals: [in, left], positions: {"off": [], left: [[in, left]]}}
          front: {kind: lamp, filament: 21 W}
          rear: {kind: lamp, filament: 21 W}
        wires:
          - {from: battery.+, to: fuse.1, size: 1 mm2, length: 0.2 m}
          - {from: fuse.2, to: flasher.49, size: 1 mm2, length: 0.2 m}
          - {from: flasher.49a, to: indicator switch.in, size: 1 mm2, length: 0.2 m}
          - {from: indicator switch.left, to: front.+, size: 1 mm2, length: 0.2 m}
          - {from: indicator switch.left, to: rear.+, size: 1 mm2, length: 0.2 m}
          - {from: front.-, to: battery.-, size: 1 mm2, length: 0.2 m}
          - {from: rear.-, to: battery.-, size: 1 mm2, length: 0.2 m}
        """;

    private static Flasher Flasher(FlasherLaw law) => new("flasher", "contact", law, 3.5, 85);

    private static void Rates(Finding told, PublishedRow row) =>
        Assert.Equal(Ends(row), (Number(Fact(told, "least")), Number(Fact(told, "most"))));

    // What the rule says of its own sample in the row's country, with the row's source and, where it is from memory, that.
    private static Finding Told(PublishedRow row, string code)
    {
        var country = row["jurisdiction"] switch { "UN contracting parties" or "UN" => "Germany", "several" => null, var named => named };
        var found = Told(code, country);
        var name = row["source"].Split(',')[0].Split(" / ")[0];
        Assert.Contains(name, found.Why, StringComparison.Ordinal);
        Assert.Equal(SaysMemory(row), found.Why.Contains("from memory", StringComparison.Ordinal));
        Assert.Equal(SaysMemory(row) ? Severity.Note : Severity.Look, found.Severity);
        return found;
    }

    private static Finding Told(string code, string? country)
    {
        var sample = Page.Find(code)!.Text.Split("```yaml\n")[1].Split("```")[0];
        var loom = DesignFile.Read(new SourceText("sample", sample)).Loom!;
        return Rules.Check(loom with { Conditions = loom.Conditions with { Country = country } }).First(f => f.Code == code);
    }

    private static string Fact(Finding found, string name) => found.Evidence.Single(e => e.Name == name).Value;

    // Written as 90 +/- 30 or as 60 to 120.
    private static (double Least, double Most) Ends(PublishedRow row) =>
        row["value"].Split(" to ") is [var least, var most] ? (Number(least), Number(most))
        : row["value"].Split(" +/- ") is [var middle, var spread] ? (Number(middle) - Number(spread), Number(middle) + Number(spread))
        : throw new FormatException(row["value"]);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

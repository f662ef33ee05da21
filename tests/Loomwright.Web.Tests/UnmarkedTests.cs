using Bunit;
using Loomwright.Web.Bikes;
using Loomwright.Web.Unmarked;
using Microsoft.Extensions.DependencyInjection;

namespace Loomwright.Web.Tests;

public sealed class UnmarkedTests : BunitContext
{
    private readonly string _folder = Directory.CreateTempSubdirectory("loomwright").FullName;

    public UnmarkedTests()
    {
        File.WriteAllText(Path.Combine(_folder, "a.loom.yaml"), """
            loomwright: 1
            name: Sandpiper
            parts:
              battery:
                kind: battery
                chemistry: agm
                capacity: 8 Ah
            """);
        Services.AddSingleton(new Garage(_folder));
    }

    [Fact]
    public async Task A_lock_is_read_pair_by_pair_and_its_table_is_written_into_the_file()
    {
        var page = await Begun("red, brown", "off, on");
        while (page.FindAll(".ask") is [var ask])
        {
            await Press(page, ask.TextContent.Contains("turn it to on", StringComparison.OrdinalIgnoreCase) ? "It beeps" : "Nothing");
        }

        Assert.Contains("Plus on red and ground on brown, or the other way round: a dead short in on.", page.Find(".points").TextContent, StringComparison.Ordinal);
        await page.Find("[aria-labelledby=into-title] form").SubmitAsync();
        Assert.Equal("Say what the switch is called.", page.Find("[aria-labelledby=into-title] [role=status]").TextContent);
        await page.Find("[aria-labelledby=into-title] input").ChangeAsync("lock");
        await page.Find("[aria-labelledby=into-title] form").SubmitAsync();
        Assert.StartsWith("Written into a.loom.yaml: lock", page.Find("[aria-labelledby=into-title] [role=status]").TextContent, StringComparison.Ordinal);
        Assert.Contains("\"on\": [[red, brown]]", await File.ReadAllTextAsync(Path.Combine(_folder, "a.loom.yaml"), Xunit.TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_switch_of_that_name_is_not_replaced_before_it_is_said_twice()
    {
        var file = Path.Combine(_folder, "a.loom.yaml");
        await File.AppendAllTextAsync(file, "\n  lock: {kind: switch, terminals: [red, brown], positions: {\"off\": [], \"on\": [[red, brown]]}}\n", Xunit.TestContext.Current.CancellationToken);
        var page = await Begun("red, brown", "off, lights");
        while (page.FindAll(".ask") is [var ask])
        {
            await Press(page, ask.TextContent.Contains("turn it to lights", StringComparison.OrdinalIgnoreCase) ? "It beeps" : "Nothing");
        }

        await page.Find("[aria-labelledby=into-title] input").ChangeAsync("lock");
        await page.Find("[aria-labelledby=into-title] form").SubmitAsync();
        Assert.StartsWith("lock is in the design already.", page.Find("[aria-labelledby=into-title] [role=alert]").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("lights", await File.ReadAllTextAsync(file, Xunit.TestContext.Current.CancellationToken), StringComparison.Ordinal);
        await page.Find("[aria-labelledby=into-title] form").SubmitAsync();
        Assert.Contains("lights", await File.ReadAllTextAsync(file, Xunit.TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_in_every_position_sends_to_the_meter_and_what_only_follows_stands_apart()
    {
        var page = await Begun("red, brown", "off, on");
        while (page.FindAll(".ask") is [_])
        {
            await Press(page, "Nothing");
        }

        Assert.StartsWith("Nothing conducts in any position.", page.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("[aria-labelledby=into-title]"));

        page = await Begun("red, brown, black", "off, on");
        while (page.FindAll(".ask") is [_])
        {
            await Press(page, "It beeps");
        }

        Assert.Contains("not touched", page.Find(".contacts").TextContent, StringComparison.Ordinal);
        Assert.Contains(page.FindAll("h3"), h => h.TextContent == "What follows from it, not touched");
    }

    [Fact]
    public async Task Ohms_are_taken_with_a_comma_and_a_reading_can_be_taken_back()
    {
        var page = await Begun("red, brown, black", "off, on, lights");
        var first = page.Find(".ask").TextContent;
        await page.Find(".ohms input").ChangeAsync("100,5");
        await page.Find(".ohms").SubmitAsync();
        Assert.Contains("100.5 Ω, neither open nor joined", page.Find(".points").TextContent, StringComparison.Ordinal);
        await Press(page, "Take back the last reading");
        Assert.Equal(first, page.Find(".ask").TextContent);
    }

    [Fact]
    public async Task What_was_read_stays_when_the_file_is_changed_meanwhile()
    {
        var page = await Begun("red, brown", "off, on");
        await Press(page, "Nothing");
        var (file, asked) = (Path.Combine(_folder, "a.loom.yaml"), page.Find(".ask").TextContent);
        await File.AppendAllTextAsync(file, "  socket:\n    kind: splice\n", Xunit.TestContext.Current.CancellationToken);
        Services.GetRequiredService<Garage>().Find("a.loom.yaml");
        page.WaitForAssertion(() => Assert.Equal(asked, page.Find(".ask").TextContent));
        Assert.Contains("open", page.Find(".contacts").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_that_cannot_be_told_apart_are_refused_with_the_cure()
    {
        var page = await Begun("brown, Brown", "off, on");
        Assert.StartsWith("Two leads have the same name.", page.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".ask"));
    }

    [Fact]
    public async Task A_lamp_with_two_filaments_tells_its_shared_lead()
    {
        var page = Render<UnmarkedPage>(p => p.Add(c => c.Path, "a.loom.yaml"));
        await page.FindAll("input[type=radio]")[1].ChangeAsync(true);
        await page.Find(".field").ChangeAsync("white, black, blue");
        await page.Find("form").SubmitAsync();
        foreach (var ohms in new[] { "0.5", "2.6", "2.1" })
        {
            await page.Find(".ohms input").ChangeAsync(ohms);
            await page.Find(".ohms").SubmitAsync();
        }

        Assert.Contains("black is the lead the filaments share", page.Find(".points").TextContent, StringComparison.Ordinal);
    }

    private async Task<IRenderedComponent<UnmarkedPage>> Begun(string leads, string positions)
    {
        var page = Render<UnmarkedPage>(p => p.Add(c => c.Path, "a.loom.yaml"));
        await page.FindAll(".field")[0].ChangeAsync(leads);
        await page.FindAll(".field")[1].ChangeAsync(positions);
        await page.Find("form").SubmitAsync();
        return page;
    }

    private static Task Press(IRenderedComponent<UnmarkedPage> page, string words) => page.FindAll("button").Single(b => b.TextContent == words).ClickAsync(new());
}

namespace Loomwright.Browser.Tests;

public sealed class ExamplesTests(Bench bench)
{
    [Fact]
    public async Task Every_design_among_the_examples_opens_on_every_page_and_fits_a_phone()
    {
        var page = await bench.Open("", "phone");
        var wrong = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                wrong.Add($"{page.Url}: {message.Text}");
            }
        };
        var addresses = await page.Locator("nav a").EvaluateAllAsync<string[]>("links => links.map(a => a.href)");
        Assert.NotEmpty(addresses);

        foreach (var address in addresses)
        {
            await page.GotoAsync(address);
            if (await page.EvaluateAsync<bool>("document.documentElement.scrollWidth > document.documentElement.clientWidth"))
            {
                wrong.Add($"{address} scrolls sideways");
            }

            if (address.Contains("/try/", StringComparison.Ordinal))
            {
                await page.Locator("[data-live]").WaitForAsync();
            }
        }

        await page.Context.CloseAsync();
        Assert.Empty(wrong);
    }
}

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
        var linked = new TaskCompletionSource();
        page.WebSocket += (_, link) => link.FrameReceived += (_, _) => linked.TrySetResult();
        var addresses = await page.Locator("nav a").EvaluateAllAsync<string[]>("links => links.map(a => a.href)");
        Assert.NotEmpty(addresses);

        foreach (var address in addresses)
        {
            linked = new();
            await page.GotoAsync(address);
            if (!address.Contains("/bench/", StringComparison.Ordinal) && !address.Contains("/sizes/", StringComparison.Ordinal))
            {
                // A page left while it still connects calls that an error.
                await linked.Task;
            }

            if (await page.EvaluateAsync<bool>("document.documentElement.scrollWidth > document.documentElement.clientWidth"))
            {
                wrong.Add($"{address} scrolls sideways");
            }
        }

        await page.Context.CloseAsync();
        Assert.Empty(wrong);
    }
}

using Loomwright.Web.Start;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

public sealed class LinkTests(Bench bench)
{
    [Fact]
    public async Task When_the_program_stops_the_page_says_so_and_stays_readable()
    {
        await using var host = await WebHost.Start(Path.Combine(AppContext.BaseDirectory, "examples"), stop: TestContext.Current.CancellationToken);
        await using var bike = new Bike(await bench.Open($"{host.Address}/try/{Bench.Kittiwake}", "phone"));
        await bike.Page.Locator("[data-live]").WaitForAsync();
        await bike.Turn("lock", "riding");
        await bike.Sees("rear cluster tail", "lit");

        await host.DisposeAsync();

        await Expect(bike.Page.GetByText("The link to the program is lost.")).ToBeVisibleAsync();
        await bike.Sees("rear cluster tail", "lit");
    }

    [Fact]
    public async Task A_page_that_calls_this_machine_by_another_name_gets_no_answer()
    {
        using var client = new HttpClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, bench.Address);
        request.Headers.Host = "elsewhere.example";

        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal(System.Net.HttpStatusCode.BadRequest, answer.StatusCode);
    }
}

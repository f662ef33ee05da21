using Loomwright.Bench;
using Loomwright.Sessions;
using Loomwright.Text;
using Loomwright.Web.Start;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

/// <summary>A stage at the bench with something wrong in it, from the first step to the last, on a phone.</summary>
public sealed class CauseTests(Bench bench) : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("loomwright");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task A_wire_one_terminal_off_is_seen_at_its_step_found_by_questions_mended_and_the_stage_ends_well()
    {
        var text = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "examples", Bench.Kittiwake), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(Path.Combine(_folder.FullName, "b.loom.yaml"), text, TestContext.Current.CancellationToken);
        var bike = Loomwright.Bike.Read(new SourceText("b", text));
        var plan = (await Proofs.Begun("b.loom.yaml", GuidedTests.Hash(), bike)).Plan;
        var stage = plan.Stages[2];
        var planted = bike.ListFaults().First(f => f.Fault.ToString() == "moved: stop lamp feed end box.X4 to box.X3");
        var world = new FaultyBench(stage, planted.Fault);
        await using var host = await WebHost.Start(_folder.FullName, stop: TestContext.Current.CancellationToken);
        await using var phone = new Guided(await bench.Open($"{host.Address}/session/b.loom.yaml", "phone"));
        await phone.Begin();
        await phone.Had(plan.Stages.Take(2).SelectMany(s => s.Steps));
        await phone.Page.GotoAsync($"{host.Address}/session/b.loom.yaml?stage=2");

        var missed = await Play(phone, stage, world);
        Assert.Equal("s2.operate.1", missed);
        await phone.Press("Find the cause");
        await Search(phone.Page, world);
        await phone.Page.Locator(".causes li", new() { HasText = planted.Repair }).GetByRole(AriaRole.Button, new() { Name = "I mended this" }).ClickAsync();
        world.Mend();

        await phone.On("restore");
        await Expect(phone.Screen.Locator(".power:visible")).ToHaveTextAsync("Power is on");
        await Expect(phone.Screen.GetByText("Hot, smoke or smell")).ToBeVisibleAsync();
        await phone.PutBack("every fuse, plug and wire");
        await phone.On("s2.measure.1");
        Assert.Null(await Play(phone, stage, world, at: missed!, says: planted.Repair));
        await phone.On("end");
        await Expect(phone.Screen).ToContainTextAsync("checks were as expected.");
        await phone.Page.GetByText("Go on to stage 3").ClickAsync();
        await phone.On(plan.Stages[3].Steps[0].Id);
        await phone.Page.GotoAsync($"{host.Address}/record/b.loom.yaml");
        await Expect(phone.Page.Locator("li", new() { HasText = planted.Repair })).ToBeVisibleAsync();
    }

    // Step by step until the stage ends, or one is not as expected: then its id.
    private static async Task<string?> Play(Guided phone, Stage stage, FaultyBench world, string at = "", string says = "")
    {
        while (await phone.Screen.GetAttributeAsync("data-screen") is { } screen && screen != "end")
        {
            if (screen == Judging.Gate(stage))
            {
                await Expect(phone.Screen).ToContainTextAsync("none is open");
                await phone.Press("Begin power-up");
                continue;
            }

            if (screen == at)
            {
                await Expect(phone.Screen.Locator("[data-before]")).ToContainTextAsync(says);
            }

            var step = stage.Steps.First(s => s.Id == screen);
            var (asExpected, readings, otherwise) = world.Do(step);
            foreach (var (what, reading) in readings)
            {
                await phone.Read(what, reading);
            }

            await phone.Press(step.Expect.IsEmpty ? "Done" : asExpected ? "As expected" : "Not");
            if (!asExpected)
            {
                await Tell(phone.Screen, otherwise);
                return screen;
            }
        }

        return null;
    }

    // As the faulty bench answers, until a cause is named.
    private static async Task Search(IPage page, FaultyBench world)
    {
        await page.Locator("main[data-live]").WaitForAsync();
        await page.GetByText("See it in the picture").First.ClickAsync();
        await Expect(page.Locator(".lit[open] .by-day").First).ToHaveJSPropertyAsync("complete", true);
        Assert.True(await page.Locator(".lit[open] .by-day").First.EvaluateAsync<int>("i => i.naturalWidth") > 100);
        Assert.Empty(await page.Locator("main :is(button, a, input, select, summary)").EvaluateAllAsync<string[]>("all => all.filter(e => e.offsetParent && Math.min(e.offsetHeight, e.offsetWidth) < 64).map(e => e.textContent)"));
        await FitTests.Holds(page);
        for (var asked = 0; asked < 12 && await page.Locator(".ask[aria-live]").CountAsync() == 1; asked++)
        {
            var question = await page.Locator(".ask").InnerTextAsync();
            var done = await page.Locator(".ask").GetAttributeAsync("data-done");
            if (await page.Locator("[data-red]").CountAsync() == 1)
            {
                var (red, black) = (await page.Locator("[data-red]").GetAttributeAsync("data-red"), await page.Locator("[data-black]").GetAttributeAsync("data-black"));
                await page.GetByLabel("It shows volts").FillAsync(world.Volts(done!, red!, black!));
                await page.GetByRole(AriaRole.Button, new() { Name = "Take this reading" }).ClickAsync();
            }
            else if (done is null)
            {
                // Looked at without power: where the wire sits is seen, all else is in order.
                var found = page.Locator($"[data-found=\"{world.Sits}\"]");
                if (await found.CountAsync() == 0)
                {
                    await page.GetByRole(AriaRole.Button, new() { Name = "As it should be" }).ClickAsync();
                }
                else
                {
                    // Of many it stands at its place.
                    var place = page.Locator("details.place", new() { Has = found });
                    if (await place.CountAsync() == 1)
                    {
                        await place.Locator("summary").ClickAsync();
                    }

                    await found.ClickAsync();
                }
            }
            else if (world.Looked(done) is { Count: > 0 } otherwise)
            {
                await page.GetByRole(AriaRole.Button, new() { Name = "Not as it should" }).ClickAsync();
                await Tell(page.Locator("form.report"), otherwise);
                await page.GetByRole(AriaRole.Button, new() { Name = "The rest is as it should be" }).ClickAsync();
                await page.GetByRole(AriaRole.Button, new() { Name = "That is what I see" }).ClickAsync();
            }
            else
            {
                await page.GetByRole(AriaRole.Button, new() { Name = "As it should be" }).ClickAsync();
            }

            await Expect(page.Locator(".ask")).Not.ToHaveTextAsync(question, new() { UseInnerText = true });
            await Expect(page.Locator("h2:focus")).ToBeInViewportAsync();
        }
    }

    private static async Task Tell(ILocator where, Dictionary<string, string> otherwise)
    {
        foreach (var (name, word) in otherwise)
        {
            await where.GetByRole(AriaRole.Combobox, new() { Name = name, Exact = true }).SelectOptionAsync(new SelectOptionValue { Label = word });
        }
    }
}

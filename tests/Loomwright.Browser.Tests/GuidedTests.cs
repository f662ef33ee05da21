using Loomwright.Bench;
using Loomwright.Sessions;
using Loomwright.Text;
using Loomwright.Web.Start;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

public sealed partial class GuidedTests(Bench bench) : IDisposable
{
    private static readonly Loomwright.Bike Kittiwake = Loomwright.Bike.Read(new SourceText("b", File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "examples", Bench.Kittiwake))));

    // Ready before the first session begins, so that none changes on the way.
    internal static readonly Plan Plan = Proofs.Begun("b.loom.yaml", Hash(), Kittiwake).GetAwaiter().GetResult().Plan;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("loomwright");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task Power_is_not_connected_while_a_line_before_it_is_open()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        await phone.Page.EvaluateAsync("localStorage.setItem('at.0.' + document.querySelector('[data-session]').dataset.session, '\"s0.gate\"')");
        await phone.Page.ReloadAsync();
        var open = Plan.Stages[0].Steps.TakeWhile(s => s.Act != Act.PowerUp).Count().ToString(System.Globalization.CultureInfo.InvariantCulture);
        await phone.On("s0.gate");
        await Expect(phone.Page.Locator("[data-connect]")).ToHaveTextAsync($"Power-up: closed, {open} lines are open");
        await phone.Page.Locator("[data-connect]").ClickAsync(new() { Force = true });
        await phone.On("s0.gate");
        await phone.Page.Locator("[data-open] button").First.ClickAsync();
        await phone.On("s0.fetch.1");
    }

    [Fact]
    public async Task The_plan_on_the_bike_is_guided_too()
    {
        await using var host = await Serve();
        await using var phone = new Guided(await bench.Open($"{host.Address}/session/b.loom.yaml", "phone"));
        await phone.Page.GetByLabel("On the bike, the finished loom").CheckAsync();
        await phone.Begin();
        var stages = Kittiwake.PlanOnTheBike().Stages;
        await phone.On(stages[0].Steps[0].Id);
        await Expect(phone.Screen).ToContainTextAsync("Battery off, both leads");
        await phone.Had(stages[0].Steps);
        await phone.On("end");
        await phone.Page.GetByText("Go on to stage 1").ClickAsync();
        await phone.Do(stages[1].Steps[0]);
        await phone.Had(stages[1].Steps.TakeWhile(s => s.Act is Act.Fetch or Act.TakeOut or Act.Connect or Act.Measure));
        await phone.On("s1.gate");
    }

    [Fact]
    public async Task What_was_not_as_expected_is_checked_again_from_what_prepares_the_ohms_on_after_something_was_changed()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        await phone.Had(Plan.Stages[0].Steps.TakeWhile(s => s.Id != "s0.power-up.4"));
        await phone.On("s0.gate");
        await Expect(phone.Screen).ToContainTextAsync("none is open");
        Assert.Equal(["What comes next, one step at a time", "Then, with power on", "Ticked"], await phone.Screen.Locator("h2:visible").AllInnerTextsAsync());
        await phone.Press("Begin power-up");
        await phone.On("s0.power-up.4");
        await phone.Press("Not");
        await Expect(phone.Screen).ToContainTextAsync("Power off before you touch anything");
        await phone.Press("Whole plan");
        await phone.On("plan");
        await Expect(phone.Screen.Locator(".power:visible")).ToHaveTextAsync("Power is on");
        await phone.Press("Hot, smoke or smell");
        await phone.Press("Pressed by mistake, go back");
        await phone.On("s0.power-up.4");
        await phone.Press("Not");
        await phone.Press("It was as expected after all");
        await phone.On("s0.power-up.4");
        await phone.Press("Not");
        await phone.Press("I changed something: check again");
        await phone.PutBack("battery +, capped", "Meter out", "red plug back to V");
        await phone.On("s0.connect.1");
    }

    [Fact]
    public async Task Left_open_with_power_on_nothing_follows_but_power_down_and_the_next_stage_names_it()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        var steps = Plan.Stages[0].Steps;
        await phone.Had(steps.TakeWhile(s => s.Id != "s0.power-up.4"));
        await phone.Press("Begin power-up");
        await phone.On("s0.power-up.4");
        await phone.Press("Not");
        await phone.Press("Leave it open: power off");
        foreach (var step in steps.Where(s => s.Act == Act.PowerDown))
        {
            await phone.Do(step);
        }

        await phone.On("end");
        await phone.Press("Back");
        await phone.On(steps[^1].Id);
        await phone.Page.GotoAsync($"{host.Address}/session/b.loom.yaml?stage=2");
        await phone.Had(Plan.Stages[2].Steps.TakeWhile(s => s.Act != Act.PowerUp));
        await phone.On("s2.gate");
        await Expect(phone.Screen.Locator("[data-stages]")).ToContainTextAsync("Stage 0: 1 line is not as expected");
        await Expect(phone.Page.Locator("[data-connect]")).ToHaveAttributeAsync("aria-disabled", "true");
        await phone.Press("Stage 1 was not done");
        await phone.On(Plan.Stages[1].Steps[0].Id);
    }

    [Fact]
    public async Task What_was_not_as_expected_does_not_become_so_before_it_is_said_what_changed()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        var step = Plan.Stages[0].Steps.First(s => s.Id == "s0.measure.1");
        await phone.Had(Plan.Stages[0].Steps.TakeWhile(s => s.Act != Act.PowerUp).Where(s => s != step));
        await phone.On(step.Id);
        await phone.Read(step.Expect[0].What, "1");
        await Expect(phone.Screen.Locator("[data-told]")).ToBeEmptyAsync();
        await phone.Press("A lone 1");
        await Expect(phone.Screen.Locator("[data-told]")).ToHaveTextAsync("OL: inside. Kept.");
        await phone.Press("Undo");
        await phone.Read(step.Expect[0].What, "3");
        await phone.Press("Not");
        await Expect(phone.Screen.Locator(".power:visible")).ToHaveTextAsync("Power is off");
        await Expect(phone.Screen.Locator("[data-not-read]")).ToHaveTextAsync($"{step.Expect[0].What}: 3 Ω, expected {step.Expect[0].Shows}");
        await phone.Press("Leave it open and go on");
        await phone.On("s0.gate");
        await phone.Page.Locator("[data-wrong] button").ClickAsync();
        await phone.On(step.Id);
        await phone.Press("No reading");
        await Expect(phone.Screen.Locator("[data-seen='as expected']")).ToHaveAttributeAsync("aria-disabled", "false");
        await phone.Press("As expected");
        await phone.On("not");
        await Expect(phone.Screen.Locator("[data-was-not]")).ToBeVisibleAsync();
        await phone.Press("It was as expected after all");
        await phone.On(step.Id);
        await phone.Press("As expected");
        await phone.On("s0.gate");
        await Expect(phone.Page.Locator("[data-connect]")).ToHaveAttributeAsync("aria-disabled", "false");
        await phone.Page.GotoAsync($"{host.Address}/record/b.loom.yaml");
        await Expect(phone.Page.Locator("body")).ToContainTextAsync("OL, inside (before that: 3, outside; not)");
    }

    [Theory]
    [InlineData("Not", true, "1 line is not as expected", true)]
    [InlineData("Not sure", false, "1 line is open", true)]
    [InlineData("Not sure", true, "1 line is not sure", false)]
    public async Task A_check_before_power_that_is_not_as_expected_or_not_measured_keeps_the_gate_closed(string answer, bool measured, string says, bool closed)
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        await phone.Had(Plan.Stages[0].Steps.TakeWhile(s => s.Act != Act.PowerUp).Where(s => s.Id != "s0.measure.1"));
        await phone.On("s0.measure.1");
        var step = Plan.Stages[0].Steps.First(s => s.Id == "s0.measure.1");
        await phone.Read(step.Expect[0].What, "0.2");
        await Expect(phone.Screen.Locator("[data-told]")).ToHaveTextAsync("0.2 Ω: outside. Kept. Nearly a short: nothing goes on before it is found.");
        await Expect(phone.Screen.Locator("[data-seen='as expected']")).ToHaveAttributeAsync("aria-disabled", "true");
        await Expect(phone.Screen.Locator("[data-lacks]")).ToContainTextAsync("outside what is expected: choose “Not”");
        if (answer == "Not sure")
        {
            await phone.Press("Undo");
            await (measured ? phone.Press("No reading") : Expect(phone.Screen.Locator("[data-told]")).ToBeEmptyAsync());
        }

        await phone.Press(answer);
        if (answer == "Not")
        {
            await phone.Press("Leave it open and go on");
        }

        await phone.On("s0.gate");
        await Expect(phone.Screen).ToContainTextAsync(says);
        await Expect(phone.Screen.GetByText("Not measured yet.")).ToHaveCountAsync(measured ? 0 : 1);
        await Expect(phone.Page.Locator("[data-connect]")).ToHaveAttributeAsync("aria-disabled", closed ? "true" : "false");
    }

    [Fact]
    public async Task After_hot_smoke_or_smell_nothing_goes_on_but_the_checks_from_what_prepares_the_ohms()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        await phone.Had(Plan.Stages[0].Steps.TakeWhile(s => s.Id != "s0.power-up.4"));
        await phone.Press("Begin power-up");
        await phone.On("s0.power-up.4");
        await phone.Press("Hot, smoke or smell");
        await phone.Press("It is off");
        await phone.On("hot-at");
        Assert.Equal(["Find the cause", "I changed something: check again"], await phone.Screen.GetByRole(AriaRole.Button).AllInnerTextsAsync());
        await phone.Screen.GetByLabel("Which wire or part").SelectOptionAsync(new SelectOptionValue { Label = "box supply (red)" });
        await Expect(phone.Screen.Locator("[data-hot-says]")).ToHaveTextAsync("The wire box supply. Kept.");

        // As from the search back to the screen it was left at.
        await phone.Page.EvaluateAsync("localStorage.setItem('at.0.' + document.querySelector('[data-session]').dataset.session, '\"not\"')");
        await phone.Page.ReloadAsync();
        await phone.On("hot-at");
        await phone.Press("I changed something: check again");
        await phone.PutBack("Meter out");
        await phone.On("s0.connect.1");
    }

    [Fact]
    public async Task Hot_smoke_or_smell_stands_on_every_powered_screen_and_leads_to_off_first()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        foreach (var stage in Plan.Stages.Take(3))
        {
            await phone.Page.GotoAsync($"{host.Address}/session/b.loom.yaml?stage={stage.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)}");
            var hot = await phone.Page.Locator("[data-screen]:has([data-hot]:not([hidden]))").EvaluateAllAsync<string[]>("all => all.map(s => s.dataset.screen)");
            Assert.Equal([.. stage.Steps.Where(s => s.PowerOn).Select(s => s.Id), "not"], hot);
        }

        await phone.Page.GotoAsync($"{host.Address}/session/b.loom.yaml?stage=0");
        await phone.Had(Plan.Stages[0].Steps.TakeWhile(s => s.Act != Act.PowerUp));
        await phone.Press("Begin power-up");
        await phone.On("s0.power-up.1");
        await Expect(phone.Screen.GetByText("Hot, smoke or smell")).ToBeVisibleAsync();

        await phone.Page.GotoAsync($"{host.Address}/session/b.loom.yaml?stage=2");
        var powered = Plan.Stages[2].Steps.First(s => s.PowerOn).Id;
        await phone.Had(Plan.Stages.Take(3).SelectMany(s => s.Steps).TakeWhile(s => s.Id != powered));
        await phone.Press("Begin power-up");
        await phone.On(powered);
        await phone.Press("Hot, smoke or smell");
        await Expect(phone.Screen.Locator("li").First).ToContainTextAsync("Hands off the wire");
        await Expect(phone.Screen.Locator("li").Nth(1)).ToContainTextAsync("Black clip lead on the end of wire battery minus (not the meter's) comes off battery -");
        await phone.Press("Pressed by mistake, go back");
        await phone.On(powered);
        await phone.Press("Hot, smoke or smell");
        await phone.Press("It is off");
        await phone.On("hot-at");
    }

    [Fact]
    public async Task A_reading_is_judged_by_the_program_and_shown_with_its_words_and_undo_takes_it_back()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        var step = Plan.Stages[0].Steps.First(s => s.Id == "s0.measure.2");
        await phone.Page.EvaluateAsync("localStorage.setItem('at.0.' + document.querySelector('[data-session]').dataset.session, '\"s0.measure.2\"')");
        await phone.Page.ReloadAsync();
        await Expect(phone.Screen.GetByText("This was done before power came on")).ToBeHiddenAsync();
        await Expect(phone.Screen.Locator("[data-lacks]")).ToContainTextAsync($"Still to be read: {step.Expect[0].What}.");
        await Expect(phone.Screen.Locator("[data-seen='as expected']")).ToHaveAttributeAsync("aria-disabled", "true");
        await Expect(phone.Screen.Locator("[data-seen='not sure']")).ToBeInViewportAsync(new() { Ratio = 1 });
        await Expect(phone.Screen.Locator("input")).ToBeInViewportAsync(new() { Ratio = 1 });
        await phone.Read(step.Expect[0].What, "0,4");
        await Expect(phone.Screen.Locator("[data-told]")).ToHaveTextAsync("0,4 Ω: inside. Kept.");
        await Expect(phone.Screen.Locator("[data-seen='as expected']")).ToHaveAttributeAsync("aria-disabled", "false");
        await phone.Read(step.Expect[0].What, "0.9");
        await Expect(phone.Screen.Locator("[data-told]")).ToHaveTextAsync("0.9 Ω: outside. Kept.");
        await phone.Read(step.Expect[0].What, "0.4.2");
        await Expect(phone.Screen.Locator("[data-told]")).ToContainTextAsync("not a number");
        await phone.Press("Undo");
        await Expect(phone.Screen.Locator("[data-told]")).ToHaveTextAsync("0.9 Ω: outside. Kept.");
    }

    [Fact]
    public async Task A_stage_is_not_begun_on_a_loom_that_the_one_before_left_live()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        await phone.Told([.. Plan.Stages[0].Steps.TakeWhile(s => s.Id != "s0.power-down.2").Select(Guided.Fine), ["s0.gate", "done", ""]]);
        await phone.Page.GotoAsync($"{host.Address}/session/b.loom.yaml?stage=1");
        await phone.On("held");
        await Expect(phone.Screen).ToContainTextAsync("Stage 0 is still on: power down first");
        await phone.Press("Go to that stage");
        await phone.On("s0.power-down.2");
    }

    [Fact]
    public async Task From_a_live_step_back_at_a_line_before_it_power_is_still_on_and_the_way_off_is_told_first()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        await phone.Had(Plan.Stages[0].Steps.TakeWhile(s => s.Id != "s0.power-up.5"));
        await phone.Press("Begin power-up");
        await phone.On("s0.power-up.5");
        for (var back = 0; back < 6; back++)
        {
            await phone.Press("Back");
            await Expect(phone.Screen.Locator(".power.on:visible")).ToHaveCountAsync(1);
            await Expect(phone.Screen.GetByText("nothing on it")).ToBeHiddenAsync();
            await Expect(phone.Screen.Locator("[data-hot]")).ToBeVisibleAsync();
        }

        await Expect(phone.Screen.Locator(".power:visible")).ToHaveTextAsync("Power is still on");

        await Expect(phone.Screen.GetByText("put no tip anywhere")).ToBeVisibleAsync();
        await Expect(phone.Screen.Locator("[data-read]:visible")).ToHaveCountAsync(0);
        await phone.Press("Not");
        await phone.On("not");
        await Expect(phone.Screen).ToContainTextAsync("Power off before you touch anything");
        await phone.Press("Leave it open: power off");
        await phone.On("s0.power-down.1");
    }

    [Fact]
    public async Task Every_screen_fits_a_phone_with_targets_for_a_thumb_and_breaks_no_rule_of_access()
    {
        await using var host = await Serve();
        var page = await bench.Open($"{host.Address}/session/b.loom.yaml", "phone");
        await FitTests.Holds(page);
        await using var phone = new Guided(page);
        await phone.Begin();
        await page.GotoAsync($"{host.Address}/session/b.loom.yaml?stage=1");
        var screens = await page.Locator("[data-screen]").EvaluateAllAsync<string[]>("all => all.map(s => s.dataset.screen)");
        var looked = new HashSet<string>(StringComparer.Ordinal);
        foreach (var screen in screens)
        {
            await page.EvaluateAsync($"document.querySelectorAll('[data-screen]').forEach(s => s.hidden = s.dataset.screen !== '{screen}')");
            var small = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('.screen:not([hidden]) :is(button, a, input)')].filter(e => e.offsetParent && Math.min(e.offsetHeight, e.offsetWidth) < 64).map(e => e.textContent)");
            Assert.Empty(small);
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= 390"), $"{screen} scrolls sideways");
            if (looked.Add(screen.Split('.') is [_, var act, _] ? act : screen))
            {
                await FitTests.Holds(page);
            }
        }

        await page.GotoAsync($"{host.Address}/record/b.loom.yaml");
        await FitTests.Holds(page);
    }

    internal static string Hash() => Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "examples", Bench.Kittiwake))));

    private async Task<WebHost> Serve(int port = 0)
    {
        File.Copy(Path.Combine(AppContext.BaseDirectory, "examples", Bench.Kittiwake), Path.Combine(_folder.FullName, "b.loom.yaml"), overwrite: true);
        return await WebHost.Start(_folder.FullName, port, stop: TestContext.Current.CancellationToken);
    }

    private async Task<Guided> Begun(WebHost host)
    {
        var phone = new Guided(await bench.Open($"{host.Address}/session/b.loom.yaml", "phone"));
        await phone.Begin();
        return phone;
    }
}

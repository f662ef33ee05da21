using Loomwright.Bench;
using Loomwright.Sessions;
using Loomwright.Text;
using Loomwright.Web.Start;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

// Several phones on one session, and a link that is lost.
public sealed partial class GuidedTests
{
    [Fact]
    public async Task With_the_laptop_away_the_phone_says_so_within_two_seconds_goes_on_for_a_minute_and_hands_over_every_answer_later()
    {
        var host = await Serve();
        await using var phone = await Begun(host);
        var port = new Uri(host.Address).Port;
        var steps = Plan.Stages[0].Steps;
        await phone.Page.Clock.InstallAsync();
        await phone.Page.ReloadAsync();
        await phone.Do(steps[0]);
        await phone.Press("Back");
        await Expect(phone.Screen.Locator("[data-answered]")).ToHaveTextAsync("Done. Kept.");
        await phone.Press("Go on");

        // Two seconds of the page's own clock, however busy the machine is.
        await phone.Page.Clock.PauseAtAsync(await phone.Page.EvaluateAsync<DateTime>("new Date(Date.now() + 1000)"));
        await Expect(phone.Link).ToHaveTextAsync("linked to the laptop");
        await host.DisposeAsync();
        await phone.Page.Clock.RunForAsync(2_000);
        await Expect(phone.Link).ToHaveTextAsync("no link to the laptop");
        await phone.Page.Clock.ResumeAsync();
        for (var at = 1; at <= 3; at++)
        {
            await phone.Do(steps[at]);
            await phone.Page.Clock.RunForAsync(20_000);
        }

        await Expect(phone.Page.GetByText("3 answers wait here and go over when the laptop is back.")).ToBeVisibleAsync();
        await phone.On(steps[4].Id);
        await phone.Press("Back");
        await Expect(phone.Screen.Locator("[data-answered]")).ToHaveTextAsync("Done. On this phone.");

        await using (var again = await Serve(port))
        {
            await Expect(phone.Link).ToHaveTextAsync("linked to the laptop");
            await Expect(phone.Screen.Locator("[data-answered]")).ToHaveTextAsync("Done. Kept.");
            await using var other = new Guided(await bench.Open($"{again.Address}/session/b.loom.yaml", "phone"));
            await other.On(steps[4].Id);
        }

        // Ten minutes in the pocket: no timer runs, and then all of them do.
        await Expect(phone.Link).ToHaveTextAsync("no link to the laptop");
        await phone.Page.Clock.FastForwardAsync("10:00");
        await using var later = await Serve(port);
        await Expect(phone.Link).ToHaveTextAsync("linked to the laptop");
        await phone.On(steps[3].Id);
    }

    [Fact]
    public async Task What_was_given_in_a_session_that_is_not_shown_any_more_goes_over_too()
    {
        await using var host = await Serve();
        await using var phone = await Begun(host);
        await phone.Page.EvaluateAsync("""
            () => {
              const id = document.querySelector("[data-session]").dataset.session;
              localStorage.setItem(`waiting.${id}`, JSON.stringify([{ id: "late", step: "s0.fetch.1", kind: "done", what: "", raw: "", of: null, at: new Date().toISOString() }]));
            }
            """);
        await phone.Page.GotoAsync($"{host.Address}/session/b.loom.yaml?anew=true");
        await phone.Begin("Bob");
        await Expect(phone.Page.Locator("body")).ToContainTextAsync("Stage 0");
        await phone.Page.WaitForFunctionAsync("Object.keys(localStorage).filter(k => k.startsWith('waiting.')).every(k => localStorage[k] === '[]')");
        using var records = Records.RecordFile.Open(_folder.FullName);
        var first = records.Sessions("b.loom.yaml")[^1];
        Assert.Equal("late", Assert.Single(records.Entries(first.Id)).Id);
    }

    [Fact]
    public async Task Two_phones_on_one_session_agree()
    {
        await using var host = await Serve();
        await using var one = await Begun(host);
        await using var other = new Guided(await bench.Open($"{host.Address}/session/b.loom.yaml", "phone"));
        await other.On("s0.fetch.1");
        await one.Do(Plan.Stages[0].Steps[0]);
        await Expect(other.Screen.Locator("[data-answered]")).ToHaveTextAsync("Done. Kept.");
    }

    [Fact]
    public async Task What_one_phone_says_against_power_leaves_no_powered_screen_on_the_other()
    {
        await using var host = await Serve();
        await using var one = await Begun(host);
        await one.Had(Plan.Stages[0].Steps.TakeWhile(s => s.Id != "s0.power-up.5"));
        await one.Press("Begin power-up");
        await one.On("s0.power-up.5");
        await using var other = new Guided(await bench.Open($"{host.Address}/session/b.loom.yaml", "phone"));
        await other.On("s0.power-up.5");
        await other.Told([["s0.measure.1", "seen", "not"]]);
        await one.On("s0.power-down.1");
        await other.On("s0.power-down.1");
        await one.Press("Hot, smoke or smell");
        await one.Press("It is off");
        await one.On("hot-at");
        await other.On("hot-at");
        await one.Press("I changed something: check again");
        await one.PutBack("Meter out");
        await one.On("s0.connect.1");
        await other.On("s0.connect.1");
        await Expect(one.Screen.Locator("[data-undo]")).ToHaveAttributeAsync("aria-disabled", "true");
        await one.Page.Locator(".screen:visible [data-undo]").ClickAsync(new() { Force = true });
        await one.On("s0.connect.1");
    }

    [Fact]
    public async Task With_the_link_lost_a_tap_on_another_page_does_not_lose_this_one_and_a_reading_outside_does_not_pass()
    {
        var host = await Serve();
        await using var phone = await Begun(host);
        var step = Plan.Stages[0].Steps.First(s => s.Id == "s0.measure.2");
        await phone.Had(Plan.Stages[0].Steps.TakeWhile(s => s != step));
        await phone.On(step.Id);

        // Nothing asks for the laptop but the tap: as one that comes before the link is known to be lost.
        await phone.Page.EvaluateAsync("for (let timer = setInterval(() => {}, 1e6); timer > 0; timer--) clearInterval(timer)");
        await host.DisposeAsync();
        await phone.Page.GetByText("Another session", new() { Exact = true }).ClickAsync();
        await Expect(phone.Page.Locator("[data-lost]")).ToContainTextAsync("Go on, on this page");
        await phone.Read(step.Expect[0].What, "0,9");
        await Expect(phone.Screen.Locator("[data-told]")).ToHaveTextAsync("0,9 Ω: outside. On this phone.");
        await Expect(phone.Screen.Locator("[data-seen='as expected']")).ToHaveAttributeAsync("aria-disabled", "true");
        await phone.Read(step.Expect[0].What, "400m");
        await Expect(phone.Screen.Locator("[data-lacks]")).ToContainTextAsync("type the number alone, or wait for the laptop");
        await phone.Do(step);
        await phone.On("s0.measure.3");
    }

    [Fact]
    public async Task A_phone_stays_with_its_session_when_another_begins_a_new_one_also_when_its_page_is_loaded_again()
    {
        await using var host = await Serve();
        await using var one = await Begun(host);
        var own = (await one.Page.Locator("[data-session]").GetAttributeAsync("data-session"))!;
        await using var other = new Guided(await bench.Open($"{host.Address}/session/b.loom.yaml?anew=true", "phone"));
        await other.Begin("Bob");
        await Expect(other.Page.Locator("[data-session]")).Not.ToHaveAttributeAsync("data-session", own);
        await one.Page.ReloadAsync();
        await Expect(one.Page.Locator("[data-session]")).ToHaveAttributeAsync("data-session", own);
    }
}

using System.Globalization;
using Loomwright.Bench;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Loomwright.Browser.Tests;

/// <summary>A guided session on a phone: what a thumb does and what an eye reads.</summary>
public sealed class Guided(IPage page) : IAsyncDisposable
{
    public IPage Page { get; } = page;

    public ILocator Screen => Page.Locator(".runs .screen:visible");

    public ILocator Link => Page.Locator("[data-link]");

    /// <summary>Begins a session from the form.</summary>
    public async Task Begin(string who = "Ann", string meter = "red meter")
    {
        await Page.GetByLabel("Who works").FillAsync(who);
        await Page.GetByLabel("Which meter").FillAsync(meter);
        await Press("Begin");
        await Expect(Link).ToHaveTextAsync("linked to the laptop");
    }

    public Task Press(string word) => Page.Locator("button:visible").GetByText(word, new() { Exact = true }).ClickAsync();

    public Task On(string step) => Expect(Screen).ToHaveAttributeAsync("data-screen", step);

    /// <summary>Does what the step asks, all as expected.</summary>
    public async Task Do(Step step)
    {
        await On(step.Id);
        foreach (var expected in step.Expect.Where(e => e.IsRead))
        {
            await Read(expected.What, Inside(expected.Band!));
        }

        await Press(step.Expect.IsEmpty ? "Done" : "As expected");
    }

    /// <summary>Hands over what a thumb would have given at steps before, all as expected, and shows what is next.</summary>
    public async Task Had(IEnumerable<Step> steps)
    {
        await Told(steps.Select(Fine));
        await Page.EvaluateAsync("Object.keys(localStorage).filter(k => k.startsWith('at.')).forEach(k => localStorage.removeItem(k))");
        await Page.ReloadAsync();
    }

    /// <summary>A step done, or as expected: what <see cref="Told"/> hands over.</summary>
    public static string[] Fine(Step step) => step.Expect.IsEmpty ? [step.Id, "done", ""] : [step.Id, "seen", "as expected"];

    /// <summary>Hands answers over from elsewhere, as another phone does: step, kind and words of each.</summary>
    public Task Told(params IEnumerable<string[]> answers) => Page.EvaluateAsync("""
        async (answers) => {
          const id = document.querySelector("[data-session]").dataset.session;
          const entries = answers.map(([step, kind, raw]) => ({ id: crypto.randomUUID(), step, kind, raw, at: new Date().toISOString() }));
          await fetch(`/session-api/${id}`, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(entries) });
        }
        """, answers.ToArray());

    /// <summary>Puts the loom back to where the ohms are read, as the page says.</summary>
    public async Task PutBack(params string[] says)
    {
        await On("restore");
        foreach (var each in says)
        {
            await Expect(Screen).ToContainTextAsync(each);
        }

        await Press("All of that is done: check again");
    }

    public async Task Read(string what, string raw)
    {
        await Screen.GetByLabel(what, new() { Exact = true }).FillAsync(raw);
        await Screen.Locator("[data-read]", new() { HasText = what }).GetByText("Enter", new() { Exact = true }).ClickAsync();
    }

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();

    private static string Inside(Band band) => band.Most is { } most
        ? ((most + (band.Least ?? 0)) / 2).ToString("0.0###", CultureInfo.InvariantCulture).Replace('.', ',')
        : "OL";
}

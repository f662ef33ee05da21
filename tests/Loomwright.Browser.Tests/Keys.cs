using Microsoft.Playwright;

namespace Loomwright.Browser.Tests;

/// <summary>A person without a mouse.</summary>
internal static class Keys
{
    private const string NameOfFocused = "() => { let e = document.activeElement; while (e.shadowRoot?.activeElement) e = e.shadowRoot.activeElement; if (e === document.body) return ''; return [e.ariaLabel, e.innerText, ...[...(e.labels ?? [])].map(l => l.innerText), e.name].filter(w => w).join(' '); }";

    /// <summary>The words on what has the focus.</summary>
    public static Task<string> Called(IPage page) => page.EvaluateAsync<string>(NameOfFocused);

    /// <summary>Tab until the focus rests on something so called: what cannot be reached this way cannot be used without a mouse.</summary>
    public static async Task Reach(IPage page, params string[] words)
    {
        for (var presses = 0; presses < 120; presses++)
        {
            var called = await Called(page);
            if (words.All(w => called.Contains(w, StringComparison.Ordinal)))
            {
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"Tab never reached {string.Join(", ", words)}");
    }
}

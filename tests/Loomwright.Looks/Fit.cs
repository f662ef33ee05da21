using Microsoft.Playwright;

namespace Loomwright.Looks;

/// <summary>What does not fit: sideways scroll, clipped text, targets under 44 px, text under 16 px.</summary>
internal static class Fit
{
    private const string Script = """
        () => {
          const out = [], wide = document.documentElement.clientWidth;
          if (document.documentElement.scrollWidth > wide) out.push(`scrolls sideways by ${document.documentElement.scrollWidth - wide} px`);
          const say = (e) => `${e.tagName.toLowerCase()}.${e.className.baseVal ?? e.className} "${e.textContent.trim().replace(/\s+/g, " ").slice(0, 40)}"`;
          const hidden = (e) => e.closest(".unseen, .skip, [hidden], #blazor-error-ui, #components-reconnect-modal") || !e.checkVisibility();
          for (const e of document.body.querySelectorAll("*")) {
            if (hidden(e) || e.closest("svg, .sideways *")) continue;
            const box = e.getBoundingClientRect(), style = getComputedStyle(e);
            if (box.width === 0) continue;
            if (box.right > wide + 1 || box.left < -1) out.push(`leaves the screen: ${say(e)}`);
            const text = [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim());
            if (text && parseFloat(style.fontSize) < 16) out.push(`text of ${style.fontSize}: ${say(e)}`);
            if (text && style.display !== "inline" && (e.scrollWidth > e.clientWidth + 1 || (style.overflowY !== "auto" && e.scrollHeight > e.clientHeight + 4))) out.push(`clipped: ${say(e)}`);
          }
          for (const e of document.querySelectorAll("a, button, input, summary, select")) {
            if (hidden(e)) continue;
            const box = (e.closest("label") ?? e).getBoundingClientRect();
            if (box.width < 43.9 || box.height < 43.9) out.push(`target of ${Math.round(box.width)} × ${Math.round(box.height)}: ${say(e)}`);
          }
          return [...new Set(out)];
        }
        """;

    public static Task<string[]> Misfits(IPage page) => page.EvaluateAsync<string[]>(Script);
}

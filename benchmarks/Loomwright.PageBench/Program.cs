using Loomwright.Chromium;
using Loomwright.PageBench;
using Loomwright.Web.Start;
using Microsoft.Playwright;

// From a click to the change in the page: the picture of a whole bike beside a page that only counts, click by click in one run.
const int Rounds = 12;
const int Slowest = 10;
const string Controls = ".board > .controls ";
const string Click = """
    ([watched, clicked, index]) => new Promise(done => {
      const root = document.querySelector(watched), target = document.querySelectorAll(clicked)[index];
      const before = performance.now();
      const watch = new MutationObserver(() => { watch.disconnect(); done(performance.now() - before); });
      watch.observe(root.shadowRoot ?? root, { subtree: true, childList: true, attributes: true, characterData: true });
      target.click();
    })
    """;
var folder = args is [var given, ..] ? given : "examples";
await using var host = await WebHost.Start(folder);
await using var empty = await EmptyHost.Start(host.Address + "/served/blazor.web.js");
await using var browser = await Browser.Start();
var (picture, counter) = (await browser.Page(Screen.Laptop), await browser.Page(Screen.Laptop));
picture.SetDefaultTimeout(600_000);
await picture.GotoAsync(host.Address + "/picture/kittiwake/kittiwake.loom.yaml");
await picture.Locator("main[data-live]").WaitForAsync();
await counter.GotoAsync(empty.Urls.First());
await counter.Locator("[data-live]").WaitForAsync();

// The key on, every button held and let go, the key off.
var buttons = await picture.Locator(Controls + ".latch").CountAsync();
List<double> ours = [], theirs = [];
List<(double Took, string What)> clicks = [];
for (var round = 0; round < Rounds; round++)
{
    await Both("input[value=riding]", 0);
    for (var i = 0; i < buttons * 2; i++)
    {
        await Both(".latch", i / 2);
    }

    await Both("input[value=off]", 0);
}

Console.WriteLine(FormattableString.Invariant($"click to change in the page, {ours.Count} clicks each, milliseconds"));
Console.WriteLine($"{"",-32} {"median",8} {"p99",8} {"longest",8}");
Row("picture of kittiwake", ours);
Row("a page that only counts", theirs);
Console.WriteLine(FormattableString.Invariant($"{"ratio",-32} {At(ours, 0.5) / At(theirs, 0.5),8:F1} {At(ours, 0.99) / At(theirs, 0.99),8:F1}"));
Console.WriteLine("the slowest of the picture, with what the program put in memory for them");
foreach (var (took, what) in clicks.OrderByDescending(c => c.Took).Take(Slowest))
{
    Console.WriteLine(FormattableString.Invariant($"  {took,6:F1}  {what}"));
}

Console.WriteLine("wanted of the picture: median 33 or less, p99 100 or less");
return 0;

async Task Both(string clicked, int index)
{
    var allocated = GC.GetTotalAllocatedBytes();
    ours.Add(await picture.EvaluateAsync<double>(Click, new object[] { ".drawn", Controls + clicked, index }));
    clicks.Add((ours[^1], FormattableString.Invariant($"click {ours.Count}: {clicked} {index + 1}, {(GC.GetTotalAllocatedBytes() - allocated) / 1024} KB")));
    theirs.Add(await counter.EvaluateAsync<double>(Click, new object[] { "button", "button", 0 }));
}

static double At(List<double> of, double share) => of.Order().ElementAt((int)Math.Min(of.Count - 1, Math.Ceiling(of.Count * share) - 1));

static void Row(string what, List<double> of) =>
    Console.WriteLine(FormattableString.Invariant($"{what,-32} {At(of, 0.5),8:F1} {At(of, 0.99),8:F1} {of.Max(),8:F1}"));

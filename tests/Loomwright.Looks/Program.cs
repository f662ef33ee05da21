using Loomwright.Chromium;
using Loomwright.Looks;
using Loomwright.Web.Start;

// Writes a picture of every page at two sizes in both themes to out/looks, and says what does not fit.
var folder = args is [var given, ..] ? given : "examples";
var output = Path.Combine("out", "looks");
Directory.CreateDirectory(output);
await using var host = await WebHost.Start(folder);
await using var browser = await Browser.Start();
var misfits = new List<string>();
foreach (var screen in new[] { Screen.Laptop, Screen.Phone })
{
    foreach (var dim in new[] { false, true })
    {
        await foreach (var view in Views.Of(browser, host.Address, screen, dim))
        {
            await view.Page.ScreenshotAsync(new() { Path = Path.Combine(output, view.FileName + ".png") });
            await view.Page.ScreenshotAsync(new() { Path = Path.Combine(output, view.FileName + "-whole.png"), FullPage = true });
            misfits.AddRange((await Fit.Misfits(view.Page)).Select(m => $"{view.FileName}: {m}"));
        }
    }
}

foreach (var misfit in misfits)
{
    Console.WriteLine(misfit);
}

Console.WriteLine($"{Directory.GetFiles(output, "*.png").Length} pictures in {output}, {misfits.Count} things that do not fit");
return misfits.Count == 0 ? 0 : 1;

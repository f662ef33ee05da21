using Loomwright.Chromium;
using Loomwright.Looks;
using Loomwright.Web.Start;

// Writes a picture of every page at two sizes in both themes to out/looks, and says what does not fit; of the views whose name begins as given, or of all.
var only = args is [var given, ..] ? given : "";
var output = Path.Combine("out", "looks");
Directory.CreateDirectory(output);
using var folder = new Folder("examples");
await using var host = await WebHost.Start(folder.Name);
await using var browser = await Browser.Start();
var misfits = new List<string>();
foreach (var screen in new[] { Screen.Laptop, Screen.Phone })
{
    foreach (var dim in new[] { false, true })
    {
        var page = await browser.Page(screen, dim);
        await foreach (var view in Views.Of(page, host.Address))
        {
            if (!view.StartsWith(only, StringComparison.Ordinal))
            {
                continue;
            }

            var name = $"{view}-{screen.Name}-{(dim ? "dim" : "light")}";
            await page.ScreenshotAsync(new() { Path = Path.Combine(output, name + ".png") });
            await page.ScreenshotAsync(new() { Path = Path.Combine(output, name + "-whole.png"), FullPage = true });
            misfits.AddRange((await Fit.Misfits(page)).Select(m => $"{name}: {m}"));
        }

        await page.Context.CloseAsync();
    }
}

foreach (var misfit in misfits)
{
    Console.WriteLine(misfit);
}

Console.WriteLine($"{Directory.GetFiles(output, "*.png").Length} pictures in {output}, {misfits.Count} things that do not fit");
return misfits.Count == 0 ? 0 : 1;

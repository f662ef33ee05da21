using Bunit;
using Loomwright.Web.Bikes;
using Loomwright.Web.Check;
using Microsoft.Extensions.DependencyInjection;

namespace Loomwright.Web.Tests;

public sealed class FixTests : BunitContext
{
    private readonly string _folder = Directory.CreateTempSubdirectory("loomwright").FullName;
    private readonly string _file;

    public FixTests()
    {
        _file = Path.Combine(_folder, "reversed.loom.yaml");
        File.Copy(Path.Combine(AppContext.BaseDirectory, "examples/gallery/lamp-reversed.loom.yaml"), _file);
        Services.AddSingleton(new Garage(_folder));
    }

    [Fact]
    public void A_fix_shows_its_lines_first_writes_only_when_told_and_the_check_is_made_again()
    {
        var before = File.ReadAllText(_file);
        var page = Render<CheckPage>(p => p.Add(c => c.Path, "reversed.loom.yaml"));

        page.Find(".fix .act").Click();
        Assert.Contains("to: tail lamp.-", page.Find(".lines").TextContent, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(_file));

        page.Find(".fix .act.main").Click();
        Assert.Contains("    to: tail lamp.+", File.ReadAllText(_file), StringComparison.Ordinal);
        Assert.Contains("Written into reversed.loom.yaml", page.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".finding"));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        Directory.Delete(_folder, recursive: true);
    }
}

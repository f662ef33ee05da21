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
        var page = Opened();

        page.Find(".fix .act").Click();
        Assert.Contains("to: tail lamp.-", page.Find(".lines").TextContent, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(_file));

        page.Find(".fix .act.main").Click();
        Assert.Contains("    to: tail lamp.+", File.ReadAllText(_file), StringComparison.Ordinal);
        Assert.Contains("Written into reversed.loom.yaml", page.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".finding"));
    }

    [Fact]
    public void A_fix_that_was_written_can_be_taken_back_on_the_page()
    {
        var before = File.ReadAllText(_file);
        var page = Opened();
        page.Find(".fix .act").Click();
        page.Find(".fix .act.main").Click();
        page.FindAll("button").Single(b => b.TextContent == "Take the last change back").Click();
        Assert.Equal(before, File.ReadAllText(_file));
        Assert.NotEmpty(page.FindAll(".finding"));
    }

    [Fact]
    public void A_fix_is_not_written_into_a_text_it_was_not_tried_on()
    {
        var page = Opened();
        page.Find(".fix .act").Click();
        var changed = "# mine\n" + File.ReadAllText(_file);
        File.WriteAllText(_file, changed);
        page.Find(".fix .act.main").Click();
        Assert.Equal(changed, File.ReadAllText(_file));
        Assert.StartsWith("Nothing was written: the file was changed by somebody else", page.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<CheckPage> Opened() => Render<CheckPage>(p => p.Add(c => c.Path, "reversed.loom.yaml"));

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        Directory.Delete(_folder, recursive: true);
    }
}

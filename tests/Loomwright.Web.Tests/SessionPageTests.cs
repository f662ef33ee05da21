using Bunit;
using Loomwright.Records;
using Loomwright.Web.Bench;
using Loomwright.Web.Bikes;
using Loomwright.Web.Guided;
using Loomwright.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Loomwright.Web.Tests;

public sealed class SessionPageTests : BunitContext
{
    private const string File = "a.loom.yaml";
    private static readonly DateTimeOffset Noon = new(2026, 5, 4, 12, 0, 0, TimeSpan.FromHours(2));

    private readonly string _folder = Directory.CreateTempSubdirectory("loomwright").FullName;
    private readonly Garage _garage;

    public SessionPageTests()
    {
        System.IO.File.Copy(Path.Combine(AppContext.BaseDirectory, "examples", "gallery", "lamp-reversed.loom.yaml"), Path.Combine(_folder, File));
        _garage = new Garage(_folder);
        Services.AddSingleton(_garage);
        Services.AddSingleton(_garage.Guide);
    }

    [Fact]
    public void A_stage_of_a_plan_opens_the_newest_session_along_that_plan_whichever_was_begun_last()
    {
        var bench = Begin(BenchSession.OnTheBench, 0);
        var bike = Begin(BenchSession.OnTheBike, 1);

        Assert.Equal((bench.Id, "0"), Shown(Link("?stage=0")));
        Assert.Equal((bike.Id, "1"), Shown(Link("?on=bike&stage=1")));
        Assert.Equal(bike.Id, Shown($"/session/{File}").Session);
    }

    [Fact]
    public void Where_none_was_begun_along_that_plan_one_is_offered_and_the_other_is_told_with_its_plan()
    {
        var bench = Begin(BenchSession.OnTheBench, 0);

        var form = Opened(Link("?on=bike&stage=1"));
        Assert.Equal("Begin at the bench", form.Find("h1").TextContent);
        Assert.True(form.Find($"input[value={BenchSession.OnTheBike}]").HasAttribute("checked"));
        Assert.False(form.Find($"input[value={BenchSession.OnTheBench}]").HasAttribute("checked"));
        var other = form.FindAll("a.big")[0];
        Assert.Equal("Go on with the session on the bench of 4 May 2026, 12:00", other.TextContent);
        Assert.Equal(bench.Id, Shown(other.GetAttribute("href")!).Session);
    }

    [Fact]
    public void From_a_stage_on_the_bike_it_goes_on_and_back_along_the_plan_on_the_bike()
    {
        Begin(BenchSession.OnTheBike, 0);
        var page = Opened(Link("?on=bike"));
        Assert.Contains("on=bike", Assert.Single(page.FindAll("nav.under a")).GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_pages_of_a_session_stay_with_it_when_another_browser_begins_one_along_the_same_plan()
    {
        var own = Begin(BenchSession.OnTheBike, 0);
        var other = Begin(BenchSession.OnTheBike, 1);

        var page = Opened(Links.Session(File, own.Id));
        Assert.Equal(own.Id, page.Find("[data-session]").GetAttribute("data-session"));
        var links = page.FindAll("[data-end] a");
        Assert.Equal(2, links.Count);
        Assert.All(links, a => Assert.Contains($"?session={own.Id}", a.GetAttribute("href"), StringComparison.Ordinal));
        Assert.Equal(own.Id, Shown(links[1].GetAttribute("href")!).Session);
        Assert.Contains("12:00", Told(links[0].GetAttribute("href")!), StringComparison.Ordinal);
        Assert.Contains("13:00", Told($"/record/{File}"), StringComparison.Ordinal);
        Assert.Equal(other.Id, Shown(Link("?on=bike")).Session);
    }

    [Fact]
    public void The_form_offers_the_newest_session_of_each_plan()
    {
        Begin(BenchSession.OnTheBike, 0);
        BenchSession[] newest = [Begin(BenchSession.OnTheBike, 1), Begin(BenchSession.OnTheBench, 2)];
        Assert.Equal(newest.Reverse().Select(s => Links.Session(File, s.Id)), Opened($"/session/{File}?anew=true").FindAll("a.big").Select(a => a.GetAttribute("href")));
    }

    [Fact]
    public void What_could_not_be_kept_when_it_was_to_begin_is_said_in_the_form()
    {
        Assert.Contains("Nothing was begun: the record could not be written.", Opened($"/session/{File}?anew=true&refused=true").Find(".severity").TextContent, StringComparison.Ordinal);
        Assert.Empty(Opened($"/session/{File}?anew=true").FindAll(".severity"));
    }

    [Theory]
    [InlineData("gone")]
    [InlineData("no text")]
    [InlineData("name: [")]
    public void A_session_and_its_record_are_there_without_their_file(string now)
    {
        var own = Begin(BenchSession.OnTheBike, 0);
        var file = Path.Combine(_folder, File);
        System.IO.File.Delete(file);
        if (now != "gone")
        {
            System.IO.File.WriteAllBytes(file, now == "no text" ? [0xff, 0xfe, 0xff] : System.Text.Encoding.UTF8.GetBytes(now));
        }

        var page = Opened($"/session/{File}");
        Assert.Equal(own.Id, page.Find("[data-session]").GetAttribute("data-session"));
        Assert.Contains(now == "name: [" ? "The file was changed" : "The file cannot be read any more", page.Find(".guided > .caution").TextContent, StringComparison.Ordinal);
        Assert.Contains("Ann", Told($"/record/{File}"), StringComparison.Ordinal);
        Assert.Empty(Opened($"/session/{File}?anew=true").FindAll("form"));
    }

    [Fact]
    public void What_was_kept_of_a_file_that_was_renamed_is_listed_under_the_name_it_had_and_leads_back_to_its_session()
    {
        var own = Begin(BenchSession.OnTheBike, 0);
        Assert.Empty(Render<HomePage>().FindAll("#gone-title"));
        System.IO.File.Move(Path.Combine(_folder, File), Path.Combine(_folder, "b.loom.yaml"));

        var row = Assert.Single(Render<HomePage>().FindAll("section[aria-labelledby=gone-title] li"));
        Assert.StartsWith($"Of a file that is no longer here: {File}.", row.TextContent, StringComparison.Ordinal);
        Assert.Equal($"/record/{File}", row.QuerySelector("a")!.GetAttribute("href"));
        var back = Render<RecordPage>(p => p.Add(c => c.Path, File)).FindAll("a.act").First(a => a.TextContent == "Back to this session");
        Assert.Equal(own.Id, Shown(back.GetAttribute("href")!).Session);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        _garage.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private BenchSession Begin(string plan, int hour) => _garage.Guide.Begin(File, "Ann", "red meter", null, Noon.AddHours(hour), plan)!;

    // Where a stage of the plan page leads to.
    private string Link(string query)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo($"/bench/{File}{query}");
        return Render<PlanPage>(p => p.Add(c => c.Path, File)).Find(".stage-sheet a.main").GetAttribute("href")!;
    }

    private (string? Session, string? Stage) Shown(string address) => Opened(address).Find("[data-session]") is var shown ? (shown.GetAttribute("data-session"), shown.GetAttribute("data-stage")) : default;

    private string Told(string address)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(address);
        return Render<RecordPage>(p => p.Add(c => c.Path, File)).Find("main").TextContent;
    }

    private IRenderedComponent<SessionPage> Opened(string address)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(address);
        return Render<SessionPage>(p => p.Add(c => c.Path, File));
    }
}

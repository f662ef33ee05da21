namespace Loomwright.Tests.Verbs;

public sealed class PrintTests
{
    private static readonly string Page = Called.With("print", "--phone", Called.Bench).Out;

    [Fact]
    public void The_page_needs_nothing_but_itself() =>
        Assert.All(["src=", "href=", "@import", "url(", "fetch(", "XMLHttp", "http:", "https:"], fetches => Assert.DoesNotContain(fetches, Page.Replace("href=\"#", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void Every_step_of_the_plan_has_its_tick_under_its_own_id()
    {
        var ids = Answered.Read(Called.Once("plan", Called.Bench, "--json")).GetProperty("stages").EnumerateArray()
            .SelectMany(s => s.GetProperty("steps").EnumerateArray()).Select(s => s.GetProperty("id").GetString()!).ToList();
        Assert.NotEmpty(ids);
        Assert.All(ids, id => Assert.Equal(2, Page.Split($"<input type=\"checkbox\" id=\"{id}\">").Length));
    }

    [Fact]
    public void Each_stage_has_its_own_way_off_and_no_other()
    {
        var stages = Page.Split("<details class=\"stage\" id=");
        Assert.DoesNotContain("class=\"hot\"", stages[0], StringComparison.Ordinal);
        Assert.All(stages[1..], stage =>
        {
            var (steps, hot) = (stage.Split("<details class=\"hot\">")[0], stage.Split("<details class=\"hot\">")[1].Split("</details>")[0]);
            Assert.StartsWith("<p>Hands off the wire.</p>", hot.Split("</summary>")[1], StringComparison.Ordinal);
            Assert.All(hot.Split("<p>")[2..].Select(p => p.Split("</p>")[0]), off => Assert.Contains($"<span>{off}</span>", steps, StringComparison.Ordinal));
        });
    }

    [Fact]
    public void It_follows_the_phones_own_light_or_dark_and_keeps_its_ticks_there()
    {
        Assert.Contains("prefers-color-scheme: dark", Page, StringComparison.Ordinal);
        Assert.Contains("localStorage", Page, StringComparison.Ordinal);
    }

    [Fact]
    public void How_a_terminal_is_written_is_said_once() =>
        Assert.Equal(2, Page.Split(" both mean terminal").Length);

    [Fact]
    public void Lithium_is_spoken_of_where_the_battery_is_a_lithium_one_and_not_where_it_is_lead_acid()
    {
        Assert.Contains("Lead-acid gives gas", Page, StringComparison.Ordinal);
        Assert.DoesNotContain("ithium", Page, StringComparison.Ordinal);

        using var folder = new Folder();
        var lithium = Of(folder, "chemistry: agm", "chemistry: lifepo4");
        Assert.Contains("Lithium battery hot or swelling: get away from it", lithium, StringComparison.Ordinal);
        Assert.DoesNotContain("ead-acid", lithium, StringComparison.Ordinal);
        Assert.Contains("the file does not say what is in it", Of(folder, "    chemistry: agm\n", ""), StringComparison.Ordinal);
    }

    [Fact]
    public void A_slip_does_not_write_over_the_design() =>
        Assert.Equal(ExitCode.WrongUsage, Called.With("print", "--phone", Called.Bench, "-o", Called.Bench).Exit);

    private static string Of(Folder folder, string text, string instead)
    {
        const string small = "examples/gallery/lamp-reversed.loom.yaml";
        var design = File.ReadAllText(Path.Combine(Repository.Root, small));
        Assert.Contains(text, design, StringComparison.Ordinal);
        return Called.With("print", "--phone", folder.Write("a.loom.yaml", design.Replace(text, instead, StringComparison.Ordinal))).Out;
    }
}

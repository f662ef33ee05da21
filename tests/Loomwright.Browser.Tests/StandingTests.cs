using System.Text.Json;
using Loomwright.Bench;
using Loomwright.Sessions;
using Loomwright.Text;
using Loomwright.Web.Guided;
using Microsoft.Playwright;

namespace Loomwright.Browser.Tests;

/// <summary>What the answers of a session lead to, asked of the page's own script without a page.</summary>
public sealed class StandingTests(StandingTests.Script script) : IClassFixture<StandingTests.Script>
{
    private static readonly Plan OnTheBike = Read("kittiwake/kittiwake.loom.yaml").PlanOnTheBike();

    [Fact]
    public async Task With_a_line_before_the_gate_told_wrong_after_Connect_the_clips_do_not_go_on()
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.1").Not("s0.measure.1");
        Assert.Equal(("s0.gate", "bare"), await After(story));
        Assert.DoesNotContain("s0.power-up.1", await Left(story));
    }

    [Fact]
    public async Task With_a_line_before_the_gate_told_wrong_while_the_loom_is_live_only_power_down_comes_and_then_the_gate()
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.5").Not("s0.measure.1");
        Assert.Equal(("s0.power-down.1", "on"), await After(story));
        Assert.Equal(("s0.gate", "off"), await After(story.Down()));
        Assert.Equal(("s0.gate", "off"), await After(story.Seen("s0.measure.1")));
        Assert.Equal(("s0.power-up.1", "bare"), await After(story.Connect()));
        Assert.Equal(("end", "off"), await After(story.Up(to: null).Down()));
    }

    [Fact]
    public async Task At_every_step_of_every_stage_a_line_told_wrong_keeps_power_from_going_on()
    {
        foreach (var plan in new[] { GuidedTests.Plan, OnTheBike })
        {
            var wrong = await script.Page.EvaluateAsync<string[]>("""
                (plan) => {
                  const stages = JSON.parse(plan);
                  const wrong = [];
                  const all = stages.flatMap((stage) => stage.steps.map((step) => [stage.number, step]));
                  const yes = (s) => ({ id: s.id, step: s.id, kind: s.check ? "seen" : "done", what: "", raw: s.check ? "as expected" : "" });
                  all.forEach(([number, step], at) => {
                    const had = all.slice(0, at).map(([, s]) => yes(s));
                    const next = Standing.of(stages, number, had).next;
                    if (next !== step.id) wrong.push(`${next} in place of ${step.id}`);
                    const line = all.find(([, s]) => s.check && !s.late)[1];
                    if (!step.late || !line) return;
                    const stands = Standing.of(stages, number, [...had, { ...yes(line), id: "not", raw: "not" }, { ...yes(line), id: "left", kind: "done" }]);
                    const acts = new Map(all.map(([, s]) => [s.id, s.act]));
                    if (["PowerUp", "Operate", "Again"].includes(acts.get(stands.next))) wrong.push(`${stands.next} after a line was wrong at ${step.id}`);
                    if (stands.left.some((id) => ["PowerUp", "Operate", "Again"].includes(acts.get(id)))) wrong.push(`power can be looked at after a line was wrong at ${step.id}`);
                  });
                  return wrong;
                }
                """, Standing.Stages(plan));
            Assert.Empty(wrong);
        }
    }

    [Fact]
    public async Task A_supply_told_wrong_on_a_live_loom_is_powered_down_and_not_taken_for_bare()
    {
        Assert.Equal(("end", "bare"), await After(new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.1").Not("s0.power-up.1")));
        var live = new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.5").Not("s0.power-up.1");
        Assert.Equal(("s0.power-down.1", "on"), await After(live));
        Assert.Equal(("end", "off"), await After(live.Down()));
    }

    [Fact]
    public async Task Heat_is_told_at_the_gate_until_what_was_mended_has_a_name()
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.5").Hot("s0.power-up.4").Changed("s0.power-up.4");
        Assert.Equal("s0.power-up.4", await Ask<string?>(story, "s.heat?.step ?? null"));
        Assert.Null(await Ask<string?>(story.Changed("s0.power-up.4", "renew box supply and both its ends"), "s.heat?.step ?? null"));
    }

    [Fact]
    public async Task Answers_are_taken_back_one_by_one_only_as_far_as_power_stays_what_it_is()
    {
        const string AllTaken = "(() => { let t = told; for (let u; (u = Standing.taken(stages, number, t)); ) t = [...t, { kind: 'undo', of: u.id }]; return Standing.of(stages, number, t).power; })()";
        Assert.Equal("on", await Ask<string>(new Story(GuidedTests.Plan.Stages[0]).Up(to: null), AllTaken));
        Assert.Equal("bare", await Ask<string>(new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.2"), AllTaken));
        Assert.Equal("s0.measure.1", await Ask<string>(new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.measure.2"), "Standing.taken(stages, number, told).step"));
    }

    [Theory]
    [InlineData("s0.power-up.1", "-12.7", " The minus says: the tips are the wrong way round, or plus and minus are. Nothing goes on before that is clear.")]
    [InlineData("s0.power-up.1", "127", " Was it 12.7?")]
    [InlineData("s0.power-up.1", "1.27", "")]
    [InlineData("s0.measure.1", "0,3", " Nearly a short: nothing goes on before it is found.")]
    public async Task A_reading_outside_comes_with_what_it_may_be_at_heart(string step, string raw, string hint) =>
        Assert.Equal(hint, await Ask<string>(new Story(GuidedTests.Plan.Stages[0]).Read(step, raw), $"Standing.hint(stages[0].steps.find(x => x.id === '{step}'), told[0])"));

    [Theory]
    [InlineData("-12.7")]
    [InlineData("-12,7")]
    [InlineData("13.9")]
    public async Task A_supply_that_reads_reversed_or_too_high_gets_no_clips_although_nobody_is_sure_of_it(string raw) =>
        Assert.Equal(("end", "bare"), await After(new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.1").Read("s0.power-up.1", raw).Seen("s0.power-up.1", Judging.Unsure)));

    [Theory]
    [InlineData("s0.measure.1", "1", true)]
    [InlineData("s0.measure.1", "1.", true)]
    [InlineData("s0.measure.1", "1.0", false)]
    [InlineData("s0.measure.1", "12", false)]
    [InlineData("s0.measure.2", "1", false)]
    [InlineData("s0.power-up.1", "1", false)]
    public async Task A_lone_1_is_asked_about_where_no_reading_would_come_to_another_end(string step, string raw, bool asks)
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Read(step, raw);
        Assert.Equal(asks, await Ask<bool>(story, "Standing.isLoneOne(stages[0].steps.find(x => x.id === told[0].step), told[0].what, told[0].raw)"));
    }

    [Fact]
    public async Task A_supply_nobody_measured_gets_no_clips()
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.1").Seen("s0.power-up.1", Judging.Unsure);
        Assert.Equal(("s0.power-up.1", "bare"), await After(story));
        Assert.Equal(("s0.power-up.2", "bare"), await After(story.Read("s0.power-up.1", "12,8")));
    }

    [Fact]
    public async Task A_current_outside_its_band_stops_power_although_nobody_is_sure_of_it()
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.4").Read("s0.power-up.4", "0.5").Seen("s0.power-up.4", Judging.Unsure);
        Assert.Equal(("s0.power-down.1", "on"), await After(story));
    }

    [Fact]
    public async Task The_next_stage_waits_while_a_plug_of_the_one_before_is_still_in_the_ten_amp_socket()
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Up(to: null).Down(but: 2);
        Assert.Equal(0, await StillOn(story, at: 1));
        Assert.Null(await StillOn(story.Down(), at: 1));
    }

    [Fact]
    public async Task Once_power_down_has_begun_nothing_is_switched_on_before_the_gate_was_asked_again()
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.4").Not("s0.power-up.4").Down(but: 2).Undo("s0.power-up.4");
        Assert.Equal(("s0.power-down.3", "on"), await After(story));
        Assert.Equal(("s0.gate", "off"), await After(story.Down()));
        Assert.Equal(("s0.power-up.1", "bare"), await After(story.Connect()));
    }

    [Theory]
    [InlineData("kittiwake/kittiwake")]
    [InlineData("gallery/kinds/charging")]
    public async Task A_battery_does_not_go_on_behind_a_riding_fuse_that_power_down_put_back(string example)
    {
        var stage = (example == "kittiwake/kittiwake" ? OnTheBike : Read($"{example}.loom.yaml").PlanOnTheBike()).Stages[1];
        var small = stage.Steps.Where(s => s.Act == Act.Connect && s.Text.Contains("for now", StringComparison.Ordinal)).Select(s => s.Id).ToList();
        Assert.NotEmpty(small);
        var last = stage.Steps.Last(s => s.Act == Act.PowerUp).Id;
        var story = new Story(stage).Up(to: last).Not(last).Down().Undo(last);
        Assert.Equal(small, await Open(story));
        Assert.Empty(small.Except(await Open(story.Changed(last))));
    }

    [Fact]
    public async Task Ohms_taken_again_do_not_meet_a_switch_or_a_plug_that_nobody_put_back()
    {
        var dead = OnTheBike.Stages[0];
        var back = dead.Steps.Where(s => s is { Act: Act.Measure, Expect.IsEmpty: true }).Select(s => s.Id).ToList();
        Assert.True(back.Count > 5);
        Assert.Empty(back.Except(await Open(new Story(dead).Up(to: null).Changed(dead.Steps[^2].Id))));
        var third = GuidedTests.Plan.Stages[3];
        var plug = third.Steps.First(s => s.Text.StartsWith("Unplug ", StringComparison.Ordinal)).Id;
        Assert.Contains(plug, await Open(new Story(third).Up(to: "s3.power-up.2").Changed("s3.power-up.2")));
    }

    [Fact]
    public async Task After_heat_the_gate_is_closed_and_the_loom_hangs_until_it_is_put_back()
    {
        var story = new Story(GuidedTests.Plan.Stages[0]).Up(to: "s0.power-up.5").Hot("s0.power-up.5");
        var hangs = await Ask<bool>(story, "s.hangs && s.power === 'off' && !s.holds && s.hot !== null");
        Assert.True(hangs);
        Assert.True(await Ask<bool>(story.Changed("s0.power-up.5"), "s.hangs && s.hot === null"));
    }

    private static Loomwright.Bike Read(string example) => Loomwright.Bike.Read(new SourceText("b", File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "examples", example))));

    private async Task<(string Next, string Power)> After(Story story) => (await Ask<string>(story, "s.next"), await Ask<string>(story, "s.power"));

    private Task<string[]> Left(Story story) => Ask<string[]>(story, "s.left");

    private Task<string[]> Open(Story story) => Ask<string[]>(story, "stages[0].steps.filter(x => !x.late && s.how(x) === 'open').map(x => x.id)");

    private Task<int?> StillOn(Story story, int at) => Ask<int?>(GuidedTests.Plan, at, story, "Standing.stillOn(stages, number, told) ?? null");

    // Only the story's own stage: what stands before it is another test's.
    private Task<T> Ask<T>(Story story, string what) => Ask<T>(new Plan("", [story.Stage], []), story.Stage.Number, story, what);

    private Task<T> Ask<T>(Plan plan, int number, Story story, string what) =>
        script.Page.EvaluateAsync<T>($"all => {{ const [stages, number, told] = all.map(JSON.parse); const s = Standing.of(stages, number, told); return {what}; }}", new[] { Standing.Stages(plan), JsonSerializer.Serialize(number), JsonSerializer.Serialize(story.Told) });

    /// <summary>A page with nothing on it but the script.</summary>
    public sealed class Script(Bench bench) : IAsyncLifetime
    {
        public IPage Page { get; private set; } = null!;

        public async ValueTask InitializeAsync()
        {
            Page = await bench.Open("served/symbols.svg", "phone");
            await Page.GotoAsync("about:blank");
            await Page.AddScriptTagAsync(new() { Content = await new HttpClient().GetStringAsync($"{bench.Address}/served/standing.js") });
        }

        public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
    }

    /// <summary>What was told of a stage, one thing after another.</summary>
    private sealed class Story(Stage stage)
    {
        private readonly List<Dictionary<string, string>> _told = [];

        public Stage Stage { get; } = stage;

        public Dictionary<string, string>[] Told => [.. _told];

        /// <summary>All as expected up to a step, through the gate; to the power-down when none is named.</summary>
        public Story Up(string? to)
        {
            foreach (var step in Stage.Steps.TakeWhile(s => s.Id != to && s.Act != Act.PowerDown))
            {
                if (step.Id == Standing.First(Stage)?.Id)
                {
                    Connect();
                }

                _ = step.Expect.IsEmpty ? Add(step.Id, "done") : Seen(step.Id);
            }

            return to is not null && to == Standing.First(Stage)?.Id ? Connect() : this;
        }

        /// <summary>Power-down, all of it or but its last steps.</summary>
        public Story Down(int but = 0)
        {
            var downs = Stage.Steps.Where(s => s.Act == Act.PowerDown).ToList();
            downs.SkipLast(but).ToList().ForEach(s => _ = s.Expect.IsEmpty ? Add(s.Id, "done") : Seen(s.Id));
            return this;
        }

        public Story Connect() => Add(Judging.Gate(Stage), "done");

        public Story Seen(string step, string raw = Judging.Yes) => Add(step, "seen", raw);

        /// <summary>Not as expected, and left open.</summary>
        public Story Not(string step) => Add(step, "seen", Judging.No).Add(step, "done");

        public Story Read(string step, string raw) => Add(step, "reading", raw, Stage.Steps.First(s => s.Id == step).Expect.First(e => e.IsRead).What);

        public Story Changed(string step, string mended = "") => Add(step, "changed", mended);

        public Story Hot(string step) => Add(step, "hot");

        /// <summary>It was as expected after all.</summary>
        public Story Undo(string step)
        {
            var not = _told.Last(t => t["step"] == step && t["kind"] == "seen");
            return Add(step, "undo", of: not["id"]);
        }

        private Story Add(string step, string kind, string raw = "", string what = "", string of = "")
        {
            _told.Add(new() { ["id"] = _told.Count.ToString(System.Globalization.CultureInfo.InvariantCulture), ["step"] = step, ["kind"] = kind, ["raw"] = raw, ["what"] = what, ["of"] = of });
            return this;
        }
    }
}

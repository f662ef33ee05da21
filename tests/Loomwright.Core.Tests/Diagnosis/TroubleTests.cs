using System.Collections.Immutable;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Tests.Diagnosis;

public sealed class TroubleTests
{
    private const string Stop = "lock=riding, front brake=pressed";
    private const string Left = "lock=riding, left button=pressed";

    private static readonly Bike Bench = Bike.Read(new SourceText("bench", Repository.Read("examples/kittiwake-bench/kittiwake-bench.loom.yaml")));
    private static readonly TroubleTable Table = Bench.Trouble();

    [Fact]
    public void No_answer_makes_anything_impossible()
    {
        ImmutableArray<Evidence> all =
        [
            .. Enumerable.Range(0, Table.Table.Observables.Length).SelectMany(o => Report.WordsOf(Table.Table.Observables[o]).Select(w => new Evidence.Seen(0, [(o, w.Sign)]))),
            .. new[] { -15.0, 0.0, 3.3, 12.4, 400.0 }.Select(volts => new Evidence.Measured(0, 0, null, volts)),
            .. Table.Singles.SelectMany(h => h.Traces).Select(t => new Evidence.Checked(t.Check, t.Found)),
        ];
        Assert.All(all.Select(a => ImmutableArray.Create(a)).Append(all), answers => Assert.All(new Belief(Table.Table, Table.Singles, answers).Weights, w => Assert.True(w > 0)));
    }

    [Fact]
    public void The_chances_of_all_signs_a_person_may_tell_make_one() =>
        Assert.All(Table.Table.Observables.Where(o => o.Sense == Sense.BoxLight), o => Assert.Equal(
            1, new[] { Symbol.Dark, Symbol.Dim, Symbol.Lit, Symbol.Flashing, Symbol.FlashingFast, Symbol.FlashingSlowly }
                .Sum(s => Misreading.Of(o, (byte)Symbol.Lit, (byte)s)), 12));

    [Fact]
    public void Not_sure_moves_nothing_and_is_not_asked_at_once_again()
    {
        var before = Trouble.Begin(Table).After(Saw($"{Stop}: rear cluster stop=dark"));
        var asked = before.Questions[0];
        var after = before.After(new Evidence.NotSure(asked.Place));
        Assert.Equal(before.Suspects.Select(s => (s.Repair, s.Share)), after.Suspects.Select(s => (s.Repair, s.Share)));
        Assert.DoesNotContain(after.Questions, q => q is Question.Look && q.Stimulus == asked.Stimulus);
    }

    [Fact]
    public void One_sign_told_leaves_what_else_lights_to_be_asked() =>
        Assert.Contains(Trouble.Begin(Table).After(Saw($"{Stop}: rear cluster stop=dark")).Questions, q => q is Question.Look && q.Stimulus == Place(Stop));

    [Fact]
    public void The_bike_stands_as_for_the_last_answer_also_where_an_older_one_is_given_anew()
    {
        var lit = Saw($"{Stop}: rear cluster stop=dark");
        var looked = Trouble.Begin(Table).After(lit).After(new Evidence.Checked(Table.Singles.SelectMany(h => h.Traces).First().Check, null));
        Assert.Null(looked.At);
        Assert.Equal(Place(Stop), looked.After(lit).At);
        Assert.Null(looked.After(lit).AtRest().At);
    }

    [Fact]
    public void What_fits_nothing_is_asked_again_and_then_told_not_to_fit()
    {
        var trouble = Trouble.Begin(Table).After(Saw(": rear cluster stop=flashing fast, rear cluster tail=flashing slowly, left rear indicator=dim"));
        Assert.Equal(Search.GoesOn, trouble.State);
        var odd = Assert.IsType<Evidence.Seen>(trouble.Odd);
        var again = trouble.After(odd);
        Assert.Equal(Search.DoesNotFit, again.State);
        Assert.Empty(again.Questions);
    }

    [Fact]
    public void A_slip_that_is_put_right_when_asked_again_is_forgotten()
    {
        var slipped = Trouble.Begin(Table).After(Saw(": rear cluster stop=flashing fast, rear cluster tail=flashing slowly, left rear indicator=dim"));
        Assert.Null(slipped.After(Seen("open: stop lamp feed", "")).Odd);
    }

    [Fact]
    public void Two_faults_at_once_are_found_when_no_single_one_goes_with_the_answers()
    {
        var trouble = Played("open: stop lamp feed", "open: left rear indicator feed");
        Assert.Contains(trouble.Suspects.Take(3), s => s.Hypotheses[0].Repairs is ["renew stop lamp feed and both its ends", "renew left rear indicator feed and both its ends"]
            or ["renew left rear indicator feed and both its ends", "renew stop lamp feed and both its ends"]);
        Assert.True(trouble.State == Search.DoesNotFit || trouble.Odd is null);
    }

    [Fact]
    public void After_a_repair_what_was_seen_still_speaks_for_the_second_fault()
    {
        string[] both = ["open: stop lamp feed", "open: left rear indicator feed"];
        var trouble = Trouble.Begin(Table).After(Seen(both, Stop)).After(Seen(both, Left));
        var stop = new Suspect("renew stop lamp feed and both its ends", 1, [Table.Singles.First(h => h.Repair == "renew stop lamp feed and both its ends")]);
        var after = trouble.Mended(stop).After(Seen("open: left rear indicator feed", Left));
        Assert.DoesNotContain(after.Suspects, s => s.Repair == stop.Repair);
        Assert.Contains(after.Suspects.Take(3), s => s.Repair == "renew left rear indicator feed and both its ends");
    }

    [Fact]
    public void What_no_question_tells_apart_is_listed_together()
    {
        var trouble = Played(["stuck: front brake at pressed"], looksAtThings: false);
        Assert.Equal(Search.CannotTellApart, trouble.State);
        Assert.Contains(trouble.Group, s => s.Repair == "replace front brake");
        Assert.Contains(trouble.Group, s => s.Repair == "separate front brake.1 from front brake.2, they touch");
    }

    [Theory]
    [InlineData("moved: front brake ground end front brake.2 to front brake.1")]
    [InlineData("short: front brake.1 to front brake.2")]
    [InlineData("stuck: front brake at pressed")]
    public void One_circuit_with_three_causes_is_told_apart_by_looking_at_the_thing_itself(string fault)
    {
        var trouble = Played(fault);
        Assert.Contains(trouble.Answers, a => a is Evidence.Checked);
        Assert.Contains(trouble.Suspects[0].Hypotheses, h => h.Faults.Any(f => f.Fault.ToString() == fault));
        Assert.True(trouble.Suspects[0].Share > 0.9);
    }

    [Fact]
    public void Where_it_got_hot_nothing_is_asked_with_power_on_before_a_repair()
    {
        var stop = Table.Place(Bench.Saw($"{Stop}: rear cluster stop=dark").Report!.Done!)!.Value;
        var answers = Trouble.Begin(Table).After(Saw($"{Stop}: rear cluster stop=dark")).Answers;
        Assert.Contains(Trouble.Begin(Table, answers).Questions, q => q.Stimulus == stop);

        var hot = Trouble.Begin(Table.Hot(stop), answers);
        Assert.NotEmpty(hot.Questions);
        Assert.DoesNotContain(hot.Questions, q => q.Stimulus is { } s && Table.Table.Stimuli[s].Operations.AsSpan().StartsWith(Table.Table.Stimuli[stop].Operations.AsSpan()));
        Assert.Null(hot.Mended(hot.Suspects[0]).Table.HotAt);
    }

    [Fact]
    public void A_fuse_that_is_too_small_blows_and_made_nothing_hot()
    {
        var text = Repository.Read("examples/cold-start/cold-start.loom.yaml").Replace("limit: 5 A", "limit: 60 A", StringComparison.Ordinal).Replace("rating: 15 A", "rating: 5 A", StringComparison.Ordinal);
        var table = Bike.Read(new SourceText("lamp", text)).Trouble(stop: TestContext.Current.CancellationToken);
        var small = table.Singles.First(h => h.Faults.Any(f => f.Fault.ToString() == "setting: main fuse rating 2.5 A"));
        var blowing = Enumerable.Range(0, table.Table.Stimuli.Length).First(s => table.Harms(small, s));
        var hot = table.Hot(blowing).Singles;
        Assert.True(hot[table.Singles.IndexOf(small)].Prior < 0.1 * small.Prior);
        Assert.Contains(hot.Zip(table.Singles), h => !h.First.Faults.IsEmpty && h.First.Prior == h.Second.Prior);
    }

    [Theory]
    [InlineData("key feed")]
    [InlineData("box")]
    [InlineData(null)]
    public void After_heat_the_named_thing_is_looked_at_first_with_minus_off_and_nothing_to_mend_stands_behind_all_that_is(string? thing)
    {
        var hot = Trouble.Begin(Table.Heated(thing).Hot(Place(Stop)));
        var check = Assert.IsType<Question.Of>(hot.Questions[0]).Check;
        Assert.True(thing is null || check.Subject == thing, check.Name);
        Assert.StartsWith("key off, minus off battery first", TroubleText.Do(hot.Table, hot.Questions[0].Place), StringComparison.Ordinal);
        Assert.DoesNotContain(hot.Questions, q => q is Question.Of { Check: { Kind: CheckKind.Part, Subject: "box" } });
        Assert.DoesNotContain(hot.Questions.SkipWhile(q => q.Stimulus is null), q => q.Stimulus is null);
        Assert.NotEqual(Hypothesis.Nothing, hot.Suspects[0].Repair);
    }

    [Fact]
    public void From_battery_to_main_fuse_minus_comes_off_first_and_behind_the_fuse_its_pulling_is_enough()
    {
        Assert.All(["battery", "main fuse"], p => Assert.StartsWith("key off, minus off battery first", Table.FirstOff(new Check(CheckKind.Terminals, p)), StringComparison.Ordinal));
        Assert.Equal("key off, main fuse out", Table.FirstOff(new Check(CheckKind.Terminals, "rear cluster")));
        Assert.Contains(Table.Designed("box"), t => t.Wires == "empty");
        Assert.Contains(Table.Designed("box"), t => t.Wires.StartsWith("stop lamp feed, ", StringComparison.Ordinal));
    }

    [Fact]
    public void After_a_repair_the_state_that_was_wrong_is_asked_first()
    {
        var wrong = Trouble.Begin(Table).After(Seen("open: stop lamp feed", Stop));
        Assert.Equal(Place(Stop), Assert.IsType<Question.Look>(wrong.Mended(wrong.Suspects[0]).Questions[0]).At);
    }

    [Fact]
    public void Volts_between_two_leads_that_nothing_holds_may_be_nought_whatever_leaks_make_of_them()
    {
        var loose = (from h in Table.Singles
                     from s in Enumerable.Range(0, h.Looks.Length)
                     from p in Table.Probes
                     where Likelihood.IsLoose(h.Looks[s], p.Red, p.Black) && Math.Abs(Likelihood.Volts(h.Looks[s], p.Red, p.Black)) > 0.5
                     select (Hypothesis: h, Read: new Evidence.Measured(s, p.Red, p.Black, 0))).ToList();
        Assert.NotEmpty(loose);
        Assert.All(loose, l => Assert.InRange(Likelihood.Of(l.Hypothesis, 1, l.Read), 0.4 * Misreading.Reading(0, 0, 0), Misreading.Reading(0, 0, 0)));
    }

    [Fact]
    public void The_chances_of_all_a_meter_may_show_on_a_lead_that_nothing_holds_make_one()
    {
        const double step = 0.005;
        var (hypothesis, read) = (from h in Table.Singles
                                  from s in Enumerable.Range(0, h.Looks.Length)
                                  from p in Table.Probes
                                  where Likelihood.IsLoose(h.Looks[s], p.Red, p.Black)
                                  select (h, new Evidence.Measured(s, p.Red, p.Black, 0))).First();
        Assert.Equal(1, Enumerable.Range(-3000, 6001).Sum(i => step * Likelihood.Of(hypothesis, 1, read with { Volts = i * step })), 0.02);
    }

    [Fact]
    public void Volts_against_battery_minus_are_the_same_measurement_in_writing_and_on_the_page() =>
        Assert.Null(Assert.IsType<Evidence.Measured>(Bench.Read("lock=riding: box.X4 to battery.- = 12.4 V").Report!.Answer).Black);

    [Fact]
    public void A_check_of_the_thing_itself_is_asked_with_the_main_fuse_out_also_where_every_state_harms()
    {
        var shorted = Trouble.Begin(Table).After(Seen("short: box.B+ to box.B-", Stop));
        var check = Assert.IsType<Question.Of>(shorted.Questions.First(q => q.Stimulus is null));
        Assert.StartsWith("key off, ", TroubleText.Do(Table, check.Place), StringComparison.Ordinal);
        Assert.All(Table.Findable(check.Check), found => Assert.NotNull(Bench.Found($"{check.Check.Name}: {found}").Report));
    }

    [Fact]
    public void A_battery_that_stands_low_is_no_fault_of_the_lamps()
    {
        var low = Bench.Loom! with { Parts = [.. Bench.Loom!.Parts.Select(p => p.Kind == "battery" ? p with { Settings = p.Settings.With("rest voltage", new Design.Value.Number(11.9)) } : p)] };
        var truth = FaultTable.Of(Patch.Apply(low, Bench.Fault("open: tail ground").Fault!), new DictionaryOptions { Stimuli = Table.Table.Stimuli, Points = Table.Table.Points, FullLight = Bench.Loom, Faults = [] }).Healthy;
        var trouble = Answered(truth, Bench.Fault("open: tail ground").Fault!.ToString());
        Assert.Equal("renew tail ground and both its ends", trouble.Suspects[0].Repair);
    }

    [Fact]
    public void An_open_feed_stands_first_beside_the_light_of_its_output()
    {
        var trouble = Played("open: stop lamp feed");
        Assert.Equal("renew stop lamp feed and both its ends", trouble.Suspects[0].Repair);
        Assert.True(trouble.Suspects[0].Share > 0.8);
    }

    [Fact]
    public void A_state_in_which_something_likely_would_blow_a_fuse_is_never_proposed()
    {
        var shorted = Table.Singles.First(h => h.Faults.Any(f => f.Fault.ToString() == "short: box.B+ to box.B-"));
        Assert.All(Table.Table.Stimuli.Select((_, s) => s), s => Assert.True(Table.Harms(shorted, s)));
        var trouble = Trouble.Begin(Table).After(Seen("short: box.B+ to box.B-", Stop));
        Assert.All(trouble.Questions, q => Assert.True(q.Stimulus is null || q.Stimulus == Place(Stop)));
    }

    [Fact]
    public void No_state_is_proposed_in_which_all_causes_together_make_a_blown_fuse_likelier_than_one_in_ten()
    {
        foreach (var answers in new ImmutableArray<Evidence>[] { [], [Saw($"{Stop}: rear cluster stop=dark")], [Seen("open: box supply", "lock=riding")] })
        {
            var weights = new Belief(Table.Table, Table.Singles, answers).Weights;
            var questions = Trouble.Begin(Table, answers).Questions.Where(q => q.Stimulus is not null).ToList();
            Assert.All(questions, q => Assert.InRange(Table.Singles.Zip(weights).Sum(h => Table.Blows(h.First, q.Stimulus!.Value) ? h.Second : 0), 0, 0.1));
        }
    }

    [Fact]
    public void What_is_not_in_the_list_explains_a_find_nothing_in_it_leaves_as_well_with_every_state_of_the_battery()
    {
        // 0.98 for the likeliest find, a guess of a fifth twice over, beside 0.02 × 0.1 for an invented one: 2 % × 0.98 × 0.04 / 0.002 = 0.39 to 1.
        var found = new Evidence.Checked(new Check(CheckKind.Terminals, "no such part"), "what no fault leaves");
        Assert.Equal(0.392 / 1.392, new Belief(Table.Table, Table.Singles, [found]).Other, 0.01);
    }

    [Fact]
    public void Where_all_lamps_are_dim_the_battery_is_measured_at_rest_before_anything_else_and_then_charged()
    {
        // A battery at 11.8 V with nothing else wrong: what leaves the lamps that are complained of as designed is no cause of it.
        var low = Bench.Loom! with { Parts = [.. Bench.Loom!.Parts.Select(p => p.Kind == "battery" ? p with { Settings = p.Settings.With("rest voltage", new Design.Value.Number(11.8)) } : p)] };
        var weak = FaultTable.Of(low, new DictionaryOptions { Stimuli = Table.Table.Stimuli, Points = Table.Table.Points, FullLight = Bench.Loom, Faults = [] }).Healthy;
        var dim = Enumerable.Range(0, weak.Looks.Length).First(s => !weak.Looks[s].LooksLike(Table.Table.Healthy.Looks[s]));
        var first = Assert.IsType<Question.Volts>(Trouble.Begin(Table).After(All(weak, dim)).Questions[0]);
        Assert.Equal(("battery.+", true, true), (Table.Table.Points[first.Red].ToString(), first.Black is null, Table.Table.Stimuli[first.At].Operations.IsEmpty));
        Assert.Equal("charge battery", Answered(weak, []).Suspects[0].Repair);
    }

    [Fact]
    public void After_a_repair_of_two_things_neither_stays_in_the_list()
    {
        string[] repairs = ["renew stop lamp feed and both its ends", "renew left rear indicator feed and both its ends"];
        var (stop, left) = (Table.Singles.First(h => h.Repair == repairs[0]), Table.Singles.First(h => h.Repair == repairs[1]));
        var both = new Hypothesis([stop.Faults[0], left.Faults[0]], [.. repairs], 1, stop.Looks, []);
        var after = Trouble.Begin(Table).After(Seen(["open: stop lamp feed", "open: left rear indicator feed"], Stop)).Mended(new Suspect(both.Repair, 1, [both]));
        Assert.DoesNotContain(after.Table.Singles, h => repairs.Contains(h.Repair));
    }

    [Fact]
    public void What_blew_a_fuse_is_not_done_again_only_because_another_answer_does_not_fit()
    {
        var blown = Enumerable.Range(0, Table.Table.Observables.Length).First(o => Table.Table.Observables[o].Sense == Sense.Fuse);
        const string key = "lock=riding";
        var saw = new Evidence.Seen(Place(key), [.. Seen("short: box.B+ to box.B-", key).Signs.Select(s => s.Observable == blown ? (blown, (byte)FuseState.Blown) : s)]);
        var trouble = Trouble.Begin(Table).After(saw).After(All(Table.Table.Healthy, Place(Stop)));
        Assert.True(trouble.TellsBlownFuse);
        Assert.True(saw.Place == trouble.NotRepeated?.Place);
        Assert.True(trouble.State == Search.DoesNotFit || trouble.Odd is null);
        Assert.NotEqual(Search.Found, trouble.State);
        Assert.StartsWith("This does not fit the rest: ", TroubleText.NotRepeated(Table, trouble.NotRepeated!), StringComparison.Ordinal);
    }

    [Fact]
    public void A_start_may_be_asked_for_under_a_fault_that_adds_no_harm_to_it_and_not_where_the_starter_turns_unasked()
    {
        var table = TroubleTable.Of(Starting.Bike, stop: TestContext.Current.CancellationToken);
        int Stimulus(bool isStart) => Enumerable.Range(0, table.Table.Stimuli.Length).First(s => table.Table.Stimuli[s].Operations is [Operation.Set { Control: "lock", Position: "riding" }, .. var more]
            && more.OfType<Operation.Set>().Any(o => o.Position == "pressed") == isStart);
        bool Harms(string fault, int stimulus) => table.Harms(table.Singles.First(h => h.Faults.Any(f => f.Fault.ToString() == fault)), stimulus);
        Assert.False(Harms("open: lamp feed", Stimulus(isStart: true)));
        Assert.True(Harms("short: start button.1 to start button.2", Stimulus(isStart: false)));
    }

    [Fact]
    public void What_each_answer_would_mean_makes_up_nearly_all_there_is()
    {
        var trouble = Trouble.Begin(Table).After(Saw($"{Stop}: rear cluster stop=dark"));
        var outlooks = trouble.Outlooks(trouble.Questions[0]);
        Assert.InRange(outlooks.Sum(o => o.Chance), 0.9, 1);
        Assert.All(outlooks, o => Assert.NotEmpty(o.Repairs));
        Assert.All(Trouble.Begin(Table).Questions, q => Assert.Distinct(trouble.Outlooks(q).Select(o => o.Answer)));
    }

    [Theory]
    [InlineData("lock=riding rear cluster stop=dark", "it does not say what was done before what was seen")]
    [InlineData("lok=riding: rear cluster stop=dark", "there is no such control")]
    [InlineData("lock=ridin: rear cluster stop=dark", "where lock stands cannot be read")]
    [InlineData("lock=riding: rear clustr stop=dark", "nothing that can be seen is called so")]
    [InlineData("lock=riding: rear cluster stop=gloomy", "how rear cluster stop is cannot be read")]
    [InlineData("lock=riding:", "nothing is told of what was seen")]
    public void What_cannot_be_read_of_a_sighting_is_named_with_the_cure(string text, string what)
    {
        var (report, problem) = Bench.Saw(text);
        Assert.Null(report);
        Assert.Equal(what, problem!.What);
        Assert.NotEmpty(problem.Cure);
    }

    [Theory]
    [InlineData("lock=riding: box.X4 to battery.- = 12,4 V", 12.4)]
    [InlineData("lock=riding: battery.- to box.X4 = -300 mV", -0.3)]
    public void A_reading_is_read_as_people_type_it(string text, double volts) =>
        Assert.Equal(volts, Assert.IsType<Evidence.Measured>(Bench.Read(text).Report!.Answer).Volts, 9);

    [Fact]
    public void The_same_thing_done_is_one_stimulus_and_another_is_added()
    {
        Assert.NotNull(Table.Place(Report.Did(Stop, Bench.Loom!).Done!));
        Assert.Null(Table.Place(Report.Did("front brake=pressed, wait 3 s", Bench.Loom!).Done!));
    }

    private static int Place(string done) => Table.Place(Report.Did(done, Bench.Loom!).Done!)!.Value;

    private static Evidence Saw(string text) => Bench.Saw(text).Report!.In(Table);

    private static Evidence.Seen Seen(string fault, string done) => Seen([fault], done);

    private static Evidence.Seen Seen(string[] faults, string done) => All(Truth(faults), Place(done));

    private static Evidence.Seen All(Entry truth, int stimulus) => new(stimulus, [.. truth.Looks[stimulus].Signs.Select((sign, o) => (o, sign))]);

    private static Entry Truth(params string[] faults)
    {
        var loom = faults.Aggregate(Bench.Loom!, (l, f) => Patch.Apply(l, Bench.Fault(f).Fault!));
        return FaultTable.Of(loom, new DictionaryOptions { Stimuli = Table.Table.Stimuli, Points = Table.Table.Points, FullLight = Bench.Loom, Faults = [] }).Healthy;
    }

    private static Trouble Played(params string[] faults) => Played(faults, looksAtThings: true);

    private static Trouble Played(string[] faults, bool looksAtThings) => Answered(Truth(faults), looksAtThings ? faults : null);

    // Answered without a slip, from the first thing that does not go as it should; without faults what asks for a look at a thing itself is left open.
    private static Trouble Answered(Entry truth, params string[]? faults)
    {
        var found = Table.Singles.Where(h => h.Faults.Any(f => faults?.Contains(f.Fault.ToString()) ?? false)).SelectMany(h => h.Traces).Where(t => t.Chance > 0.7).ToList();
        var first = Enumerable.Range(0, truth.Looks.Length).First(s => !truth.Looks[s].LooksLike(Table.Table.Healthy.Looks[s]));
        var trouble = Trouble.Begin(Table).After(All(truth, first));
        for (var asked = 0; trouble.State == Search.GoesOn && asked < 60; asked++)
        {
            trouble = trouble.After(trouble.Questions[0] switch
            {
                Question.Volts v => new Evidence.Measured(v.At, v.Red, v.Black, Likelihood.Volts(truth.Looks[v.At], v.Red, v.Black)),
                Question.Of of when faults is null => new Evidence.NotSure(of.Place),
                Question.Of of => new Evidence.Checked(of.Check, found.FirstOrDefault(t => t.Check == of.Check).Found),
                var look => All(truth, look.Stimulus!.Value),
            });
        }

        return trouble;
    }
}

using CsCheck;
using Loomwright.Design;
using Loomwright.Parts;
using static Loomwright.Tests.Parts.Given;

namespace Loomwright.Tests.Parts;

public sealed class KindLaws
{
    public static TheoryData<string> KindNames() => [.. Kinds.All.Select(k => k.Name)];

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Every_kind_and_everything_it_asks_has_a_meaning(string name)
    {
        var kind = Kinds.Find(name)!;
        Assert.EndsWith(".", kind.Meaning, StringComparison.Ordinal);
        foreach (var parameter in Everything(kind.Parameters))
        {
            Assert.True(parameter.Meaning.EndsWith('.') && parameter.Meaning.Length > 10, parameter.Key);
            Assert.False(parameter.Required && parameter.Meaning.Contains("Default", StringComparison.Ordinal), parameter.Key);
        }
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void A_part_of_which_nothing_is_said_still_gives_a_model(string name) =>
        Holds(Model(name));

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Whatever_stands_under_its_keys_a_model_comes_of_it(string name)
    {
        Value[] odd = [Si(0), Si(-1), Si(double.NaN), Si(1e300), Word(""), Word("left"), Words(), Words("a", "a", "b"), Pairs(("a", "a"), ("a", "q")), Group(("a", Si(1)), ("b", Group(("when", Word("((")))))];
        foreach (var value in odd)
        {
            var kind = Kinds.Find(name)!;
            Holds(Model(name, [.. kind.Parameters.Select(p => (p.Key, value))]));
            foreach (var parameter in kind.Parameters)
            {
                Holds(Model(name, (parameter.Key, value)));
            }
        }
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void However_its_settings_are_thrown_together_a_model_comes_of_it(string name) =>
        Thrown(Kinds.Find(name)!.Parameters).Sample(settings => Holds(Kinds.Find(name)!.Build(new Part("it", name, null, OnAFrame(settings)))));

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Nothing_passive_gives_power_away(string name)
    {
        foreach (var element in Usual(name).Elements.Where(e => e.Curve is not (Cells or LimitedSource)))
        {
            for (var volts = -20.0; volts <= 20; volts += 0.25)
            {
                Assert.True(element.Curve.At(volts).Amps * volts >= 0, element.Name);
            }
        }
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Nothing_passive_takes_current_at_no_volts(string name)
    {
        foreach (var element in Usual(name).Elements.Where(e => e.Curve is not (Cells or LimitedSource)))
        {
            Assert.Equal(0, element.Curve.At(0).Amps);
            Assert.Equal(0, element.Cold?.At(0).Amps ?? 0);
        }
    }

    [Theory]
    [MemberData(nameof(KindNames))]
    public void Every_kind_has_its_page_with_equation_assumption_range_source_and_check_value(string name)
    {
        var page = Pages.Read($"docs/models/{name.Replace(' ', '-')}.md");
        Assert.StartsWith($"# {char.ToUpperInvariant(name[0])}{name[1..]}", page, StringComparison.Ordinal);
        foreach (var head in new[] { "**Equation.**", "**Assumes.**", "**Range.**", "**Source.**", "**Check value.**" })
        {
            Assert.Contains(head, page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_is_thrown_together_is_often_enough_a_working_box()
    {
        var kind = Kinds.Find("load controller")!;
        var working = 0;
        Thrown(kind.Parameters).Array[2000].Sample(
            many => working = many.Count(s => kind.Build(new Part("it", kind.Name, null, OnAFrame(s))).Controller is { Outputs.IsEmpty: false }), iter: 1, seed: "ax87mnapMrN1");
        Assert.InRange(working, 5, 2000);
    }

    [Fact]
    public void No_two_kinds_share_a_name() =>
        Assert.Equal(Kinds.All.Length, Kinds.All.Select(k => k.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());

    /// <summary>A part of each kind as an owner would describe it, without a problem.</summary>
    internal static Model Usual(string kind)
    {
        var model = kind switch
        {
            "battery" => Model(kind, ("chemistry", Word("agm")), ("capacity", Si(10))),
            "breaker" => Model(kind, ("rating", Si(15))),
            "resistor" => Model(kind, ("resistance", Si(10))),
            "connector" => Model(kind, ("cavities", Words("1", "2"))),
            "button block" => Model(kind, ("reports by", Word("data lead")), ("buttons", Words("left", "horn"))),
            "tell-tale" => Model(kind, ("led", Si(0.12))),
            "fuse" => Model(kind, ("rating", Si(15))),
            "switch" => Model(kind, ("terminals", Words("r", "s", "t", "u")), ("positions", Group(("off", Pairs()), ("riding", Pairs(("r", "s"), ("t", "u"))), ("park", Pairs(("r", "u")))))),
            "lamp" => Model(kind, ("leads", Words("tail", "stop", "ground")), ("elements", Group(("tail", Group(("filament", Si(5)))), ("stop", Group(("led", Si(3))))))),
            "load controller" => LoadControllerTests.Box(),
            _ => Model(kind),
        };
        Assert.Empty(model.Problems);
        return model;
    }

    private static IEnumerable<Parameter> Everything(IEnumerable<Parameter> parameters) =>
        parameters.SelectMany(p => Everything(Under(p.Form)).Prepend(p));

    private static IEnumerable<Parameter> Under(Form form) => form switch
    {
        Form.Keys keys => keys.Parameters,
        Form.Each each => Under(each.Entry),
        _ => [],
    };

    private static readonly string[] Pool = ["a", "b", "c", "A", "b ", "ground", "a off", "+", "-", ""];

    private static Gen<Settings> Thrown(IEnumerable<Parameter> parameters) =>
        Gen.OneOf([.. parameters.Select(p => Under(p).Select(v => KeyValuePair.Create(p.Key, v))), Gen.Const(KeyValuePair.Create("x-mine", Word("a")))])
            .Array[0, 12]
            .Select(entries => new Settings([.. entries.DistinctBy(e => e.Key)]));

    // Enough said that a box or switch comes of it more often than not.
    private static Settings OnAFrame(Settings thrown)
    {
        var frame = Settings(("plugs", Group(("P", Words("+", "-", "a", "b", "c")))), ("supply", Word("+")), ("ground", Word("-")), ("terminals", Words("a", "b", "c")));
        return new Settings([.. frame.Entries.Where(e => thrown[e.Key] is null), .. thrown.Entries]);
    }

    private static Gen<Value> Under(Parameter parameter) => Any(parameter.Form);

    private static Gen<Value> Any(Form form)
    {
        var mark = OneOf(Pool);
        return form switch
        {
            Form.Quantity q => Gen.OneOf(Gen.Double[q.Least, q.Most], Gen.Double).Select(Si),
            Form.Choice c => OneOf([.. c.Options, "neither"]).Select(Word),
            Form.Condition => OneOf("always", "always at 20 %", "a", "b and not c", "latching(a; until b, 2 s)", "a is b", "blinking (").Select(Word),
            Form.Names => mark.Array[0, 5].Select(names => Words(names)),
            Form.Pairs => Gen.Select(mark, mark).Array[0, 4].Select(pairs => Pairs([.. pairs])),
            Form.Each each => Gen.Select(mark, Any(each.Entry)).Array[0, 4].Select(e => (Value)new Value.Group(new Settings([.. e.DistinctBy(x => x.Item1.Trim().ToLowerInvariant()).Select(x => KeyValuePair.Create(x.Item1, x.Item2))]))),
            Form.Keys keys => Thrown(keys.Parameters).Select(s => (Value)new Value.Group(s)),
            _ => mark.Select(Word),
        };
    }

    private static Gen<string> OneOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    // What the simulation relies on, whatever the owner wrote.
    private static void Holds(Model model)
    {
        Assert.Equal(model.Elements.Length, model.Elements.Select(e => e.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        var marks = model.Terminals.Select(t => t.Mark).ToHashSet(StringComparer.Ordinal);
        Assert.Equal(model.Terminals.Length, marks.Count);
        Assert.All(model.Elements, e => Assert.True(marks.Contains(e.From) && marks.Contains(e.To), e.Name));
        Assert.All(model.Sights, s => Assert.Contains(model.Elements, e => e.Name == (s.Element)));
        Assert.All(model.Controls, c => Assert.Contains(c.Rest, c.Positions));
        Assert.All(model.Problems, p => Assert.True(p.What.Length > 0 && p.Cure.Length > 0));
    }
}

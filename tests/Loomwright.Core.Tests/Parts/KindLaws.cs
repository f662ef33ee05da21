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
    public void Nothing_passive_takes_current_at_no_volts(string name)
    {
        foreach (var element in Usual(name).Elements.Where(e => e.Curve is not (Source or LimitedSource)))
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
    public void No_two_kinds_share_a_name() =>
        Assert.Equal(Kinds.All.Length, Kinds.All.Select(k => k.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());

    /// <summary>A part of each kind as an owner would describe it, without a problem.</summary>
    internal static Model Usual(string kind)
    {
        var model = kind switch
        {
            "battery" => Model(kind, ("chemistry", Word("agm")), ("capacity", Si(10))),
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

    // What the simulation relies on, whatever the owner wrote.
    private static void Holds(Model model)
    {
        Assert.Equal(model.Elements.Length, model.Elements.Select(e => e.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        var marks = model.Terminals.Select(t => t.Mark).ToHashSet(StringComparer.Ordinal);
        Assert.Equal(model.Terminals.Length, marks.Count);
        Assert.All(model.Elements, e => Assert.True(marks.Contains(e.From) && marks.Contains(e.To), e.Name));
        Assert.All(model.Sights, s => Assert.Contains(model.Elements, e => e.Name == (s is Sight.Lamp l ? l.Element : ((Sight.Horn)s).Element)));
        Assert.All(model.Controls, c => Assert.Contains(c.Rest, c.Positions));
        Assert.All(model.Problems, p => Assert.True(p.What.Length > 0 && p.Cure.Length > 0));
    }
}

using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Text;

namespace Loomwright.Tests.Diagnosis;

/// <summary>On a bike without a box only what lights at the wrong moment tells that a switch of the other sense was built in.</summary>
public sealed class WrongSettingTests
{
    private static readonly Bike Sandpiper = Bike.Read(new SourceText("sandpiper", Repository.Read("examples/sandpiper/sandpiper.loom.yaml")));
    private static readonly TroubleTable Table = Sandpiper.Trouble();

    [Fact]
    public void A_stop_lamp_lit_with_the_key_on_speaks_for_a_brake_switch_of_the_other_sense_first()
    {
        var suspects = Trouble.Begin(Table).After(Sandpiper.Saw("lock=riding: rear lamp stop=lit").Report!.In(Table)).Suspects;
        Assert.Equal(["make front brake as designed: rests", "make rear brake as designed: rests"], suspects.Take(2).Select(s => s.Repair).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("setting: front brake rests closed")]
    [InlineData("setting: rear brake rests closed")]
    [InlineData("setting: gearbox rests open")]
    [InlineData("setting: kill switch stops by closing")]
    public void Its_search_ends_with_it(string setting)
    {
        var fault = Sandpiper.Fault(setting).Fault!;
        var truth = FaultTable.Of(Patch.Apply(Sandpiper.Loom!, fault), new DictionaryOptions { Stimuli = Table.Table.Stimuli, Points = Table.Table.Points, FullLight = Sandpiper.Loom, Faults = [] }).Healthy;
        var found = Table.Singles.Single(h => h.Faults.Any(f => f.Fault == fault)).Traces.Where(t => t.Chance > 0.7).ToList();
        Evidence.Seen All(int stimulus) => new(stimulus, [.. truth.Looks[stimulus].Signs.Select((sign, o) => (o, sign))]);

        var trouble = Trouble.Begin(Table).After(All(Enumerable.Range(0, truth.Looks.Length).First(s => !truth.Looks[s].LooksLike(Table.Table.Healthy.Looks[s]))));
        for (var asked = 0; trouble.State == Search.GoesOn && asked < 60; asked++)
        {
            trouble = trouble.After(trouble.Questions[0] switch
            {
                Question.Volts v => new Evidence.Measured(v.At, v.Red, v.Black, Likelihood.Volts(truth.Looks[v.At], v.Red, v.Black)),
                Question.Of of => new Evidence.Checked(of.Check, found.FirstOrDefault(t => t.Check == of.Check).Found),
                var look => All(look.Stimulus!.Value),
            });
        }

        Assert.Equal(Search.Found, trouble.State);
        Assert.Contains(trouble.Suspects[0].Hypotheses, h => h.Faults.Any(f => f.Fault == fault));
    }
}

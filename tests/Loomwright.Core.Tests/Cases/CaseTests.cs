using System.Text;
using Loomwright.Cases;
using Loomwright.Findings;

namespace Loomwright.Tests.Cases;

/// <summary>Faults told in public, each on a circuit written from its account before anything was computed from it.</summary>
public class CaseTests
{
    public static TheoryData<string> Numbers => [.. Folders.Numbers];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_case_reads_without_complaint_and_means_something_in_its_circuit(string number)
    {
        var file = Folders.File(number);
        Assert.Empty(file.Findings.Select(f => $"{f.What}: {f.Do}"));
        Assert.Empty(Folders.Trial(number).Problems);
    }

    [Fact]
    public void What_was_seen_is_what_the_circuit_with_the_cause_shows_and_the_healthy_one_does_not()
    {
        var trials = Folders.Numbers.Select(n => (n, Folders.Trial(n))).ToList();
        if (Folders.ArePublished)
        {
            Golden.Check("cases.md", Table(trials));
        }
        else
        {
            Assert.True(trials.Count > 0 && trials.TrueForAll(t => t.Item2.Agrees), Table(trials));
        }
    }

    [Fact]
    public void A_circuit_without_the_cause_in_it_agrees_with_no_case() =>
        Assert.All(Folders.Numbers, n => Assert.False(Trial.Of(Folders.Loom(n), Folders.File(n).Case! with { Cause = [] }).Agrees));

    private static string Table(List<(string Number, Trial Trial)> trials)
    {
        var table = new StringBuilder("| case | grade | cause | do | told | healthy | predicted | agrees |\n|---|---|---|---|---|---|---|---|\n");
        foreach (var (number, trial) in trials)
        {
            foreach (var seen in trial.Compared)
            {
                var cause = string.Join(" and ", trial.Case.Cause.Except(seen.Sighting.Mended));
                var steps = string.Join(", ", seen.Sighting.Do.DefaultIfEmpty("nothing"));
                table.Append(FormattableString.Invariant($"| {number} | {trial.Case.Grade} | {cause} | {steps} | {seen.What}: {seen.Word} | {seen.Healthy.Words} | {seen.WithCause.Words} | {(seen.WithCause.Holds ? "yes" : "no")} |\n"));
            }
        }

        var agreeing = trials.Where(t => t.Trial.Agrees).ToList();
        var others = trials.Except(agreeing).Select(t => t.Number).DefaultIfEmpty("none");
        return table.Append(FormattableString.Invariant($"\n{trials.Count} cases: {agreeing.Count} agree, {trials.Count - agreeing.Count} do not ({string.Join(", ", others)}).\n")).ToString();
    }
}

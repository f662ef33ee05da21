using System.Globalization;
using System.Text;
using Loomwright.Cases;
using Loomwright.Diagnosis;

namespace Loomwright.Tests.Cases;

public sealed class RankTests
{
    /// <summary>C and R cases: the cause was found and the repair worked, or the maker says so.</summary>
    [Fact]
    public void The_cause_of_each_told_case_stands_where_the_table_says()
    {
        var table = new StringBuilder("| case | grade | cause | told alone | after its questions | questions | ended | first |\n|---|---|---|---|---|---|---|---|\n");
        var all = Folders.Numbers.Select(n => (Number: n, Told: Folders.File(n).Case!)).Where(c => c.Told.Grade is "C" or "R").Select(c => (c.Number, Search: CaseSearch.Of(Folders.Loom(c.Number), c.Told))).ToList();
        foreach (var (number, search) in all)
        {
            table.Append(CultureInfo.InvariantCulture, $"| {number} | {search.Grade} | {string.Join(" and ", search.Cause)} | {Ranks(search, s => s.ToldRank)} | {Ranks(search, s => s.AskedRank)} | {string.Join(", then ", search.Stages.Select(s => s.Steps.Length))} | {string.Join(", then ", search.Stages.Select(s => Words(s.Asked.State)))} | {string.Join(", then ", search.Stages.Select(s => s.Asked.Suspects[0].Repair))} |\n");
        }

        var (told, asked) = (all.Count(c => c.Search.ToldRank <= CaseSearch.Few), all.Count(c => c.Search.AskedRank <= CaseSearch.Few));
        table.Append(CultureInfo.InvariantCulture, $"\n{all.Count} cases: the cause is among the first three of {told} by what was told alone, of {asked} after the search's own questions.\n");
        if (Folders.ArePublished)
        {
            Golden.Check("case-ranks.md", table.ToString());
        }
        else
        {
            Assert.True(asked == all.Count, table.ToString());
        }
    }

    private static string Ranks(CaseSearch search, Func<CaseStage, int?> rank) => string.Join(", then ", search.Stages.Select(s => rank(s)?.ToString(CultureInfo.InvariantCulture) ?? "not listed"));

    private static string Words(Search state) => state switch
    {
        Search.Found => "found",
        Search.CannotTellApart => "cannot be told apart",
        Search.DoesNotFit => "does not fit",
        _ => "goes on",
    };
}

using System.Text;
using Loomwright.Cases;

namespace Loomwright.Tests.Cases;

public sealed class RankTests
{
    /// <summary>C and R cases: the cause was found and the repair worked, or the maker says so.</summary>
    [Fact]
    public void The_cause_of_each_told_case_stands_where_the_table_says()
    {
        var table = new StringBuilder("| case | grade | cause | rank | first | share |\n|---|---|---|---|---|---|\n");
        var (all, among) = (0, 0);
        foreach (var number in Folders.Numbers)
        {
            var told = Folders.File(number).Case!;
            if (told.Grade is not ("C" or "R"))
            {
                continue;
            }

            var ranked = CaseRank.Of(Folders.Loom(number), told);
            all++;
            among += ranked.Rank is <= 3 ? 1 : 0;
            table.Append(FormattableString.Invariant($"| {number} | {told.Grade} | {string.Join(" and ", told.Cause)} | {ranked.Rank?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "not listed"} | {ranked.Repairs[0].Repair} | {ranked.Repairs[0].Share * 100:0} % |\n"));
        }

        table.Append(FormattableString.Invariant($"\n{all} cases: the cause is among the first three of {among}.\n"));
        if (Folders.ArePublished)
        {
            Golden.Check("case-ranks.md", table.ToString());
        }
        else
        {
            Assert.True(among == all, table.ToString());
        }
    }
}

using System.Globalization;
using System.Reflection;

namespace Loomwright.Tests.Laws;

public sealed class TrapPage
{
    private static readonly IReadOnlyList<string[]> Rows = [.. Pages.Table("docs/traps.md", "Traps")];

    [Fact]
    public void Every_test_on_the_page_of_traps_is_there()
    {
        var tests = from type in typeof(TrapPage).Assembly.GetTypes()
                    from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static)
                    where method.GetCustomAttribute<FactAttribute>() is not null
                    select $"{type.Name}.{method.Name}";
        Assert.Empty(Rows.Select(r => r[2]).Except(tests));
    }

    [Fact]
    public void Every_trap_that_can_be_fallen_into_without_a_plan_has_one() =>
        Assert.Equal(Enumerable.Range(1, 13), Rows.Select(r => int.Parse(r[0], CultureInfo.InvariantCulture)).Where(n => n <= 13).Distinct());
}

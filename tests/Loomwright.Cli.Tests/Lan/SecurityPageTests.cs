using System.Reflection;
using System.Text.RegularExpressions;

namespace Loomwright.Tests.Lan;

public sealed partial class SecurityPageTests
{
    [Fact]
    public void Every_attack_on_the_page_has_its_test_and_every_test_of_an_attack_stands_on_the_page()
    {
        var named = Named().Matches(Repository.Read("docs/security.md")).Select(m => m.Groups["test"].Value).Order(StringComparer.Ordinal);
        var there = from type in new[] { typeof(DoorTests), typeof(PathTests), typeof(MarkupTests) }
                    from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance)
                    where method.GetCustomAttribute<FactAttribute>() is not null
                    select $"{type.Name}.{method.Name}";
        Assert.Equal(there.Order(StringComparer.Ordinal), named);
    }

    [GeneratedRegex(@"\| `(?<test>\w+\.\w+)` \|", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Named();
}

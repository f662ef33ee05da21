using System.Reflection;

namespace Loomwright.Tests.Published;

/// <summary>docs/published.md against the tables and the tests: which figure is used where, and which row has no use and why.</summary>
public sealed class PublishedPage
{
    private const string Where = "docs/published.md";
    private static readonly List<string[]> Tables = [.. Pages.Table(Where, "Tables")];
    private static readonly List<string[]> Unused = [.. Pages.Table(Where, "Rows without a use")];

    [Fact]
    public void Every_table_is_on_the_page()
    {
        var root = Path.Combine(Repository.Root, "tests/published");
        var files = Directory.GetFiles(root, "*.csv", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(root, f).Replace('\\', '/'));
        Assert.Equal(files.Order(StringComparer.Ordinal), Tables.Select(t => t[0]).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_test_the_page_names_is_there()
    {
        var tests = typeof(PublishedPage).Assembly.GetTypes().SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Instance)).Where(m => m.GetCustomAttribute<FactAttribute>() is not null).Select(m => m.Name).ToHashSet(StringComparer.Ordinal);
        Assert.All(Tables.SelectMany(t => t[2].Split("<br>")), name => Assert.Contains(name.Trim('`').Replace(' ', '_'), tests));
    }

    [Fact]
    public void Every_row_the_page_leaves_out_is_in_its_table_and_has_its_reason() => Assert.All(Unused, line =>
    {
        Assert.True(PublishedTable.Read(line[0]).Rows.Any(r => string.Join(", ", r.Cells.Values).Contains(line[1], StringComparison.Ordinal)) || !PublishedTable.IsOurs, line[1]);
        Assert.NotEmpty(line[2]);
    });

    /// <summary>A row no test holds must stand on the page with its reason; of another folder's rows there is no page, so they are warned of.</summary>
    /// <exception cref="PublishedRows.NoUseException">Always, unless it fails.</exception>
    internal static void SaysWhyNot(string file, string row)
    {
        if (!Unused.Any(line => line[0] == file && row.Contains(line[1], StringComparison.Ordinal)))
        {
            if (PublishedTable.IsOurs)
            {
                Assert.Fail($"{file}: nothing holds “{row}”, and {Where} does not say why");
            }

            TestContext.Current.AddWarning($"{file}: nothing here holds “{row}”");
        }

        throw new PublishedRows.NoUseException();
    }
}

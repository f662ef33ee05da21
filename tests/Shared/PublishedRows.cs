using Xunit.Sdk;

namespace Loomwright.Tests;

/// <summary>Checks that go through a published table row by row, each row as far as its basis bears.</summary>
public static class PublishedRows
{
    /// <summary>
    /// A row that was read in its source must pass. A row from memory may not stand for the standard: where it differs the test
    /// warns and names it. Says how many there were of each; at least one must have been read unless <paramref name="allFromMemory"/> or the folder is another one.
    /// </summary>
    public static void Each(string file, IEnumerable<PublishedRow> rows, Func<PublishedRow, bool> fromMemory, Action<PublishedRow> check, bool allFromMemory = false)
    {
        var (read, plausible, differs, unused) = (0, 0, 0, 0);
        foreach (var row in rows)
        {
            try
            {
                check(row);
                (read, plausible) = fromMemory(row) ? (read, plausible + 1) : (read + 1, plausible);
            }
            catch (NoUseException)
            {
                unused++;
            }
            catch (XunitException e) when (fromMemory(row))
            {
                differs++;
                TestContext.Current.AddWarning($"{file}, from memory, differs: {string.Join(", ", row.Cells.Values)}: {e.Message}");
            }
        }

        Assert.True(read > 0 || allFromMemory || !PublishedTable.IsOurs, $"{file} has no row that was read");
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{file}: {read} rows read in their source hold; from memory: {plausible} plausible, {differs} differ; without a use: {unused}"));
    }

    /// <summary>Told by a check about a row that nothing here uses; such rows are counted apart.</summary>
    public sealed class NoUseException : Exception;

    /// <summary>Whether the basis of a row says memory before it says anything else.</summary>
    public static bool SaysMemory(PublishedRow row) => row["basis"].Contains("memory", StringComparison.Ordinal);
}

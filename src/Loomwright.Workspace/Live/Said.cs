using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Live;

/// <summary>What a file says, as a count of its words, each with the keys it stands under; not in which order or style.</summary>
internal static class Said
{
    /// <summary>Whether the last text says what the third says, with the difference between the first two put back: each change where it should be, and nothing else.</summary>
    public static bool IsUndone(SourceText before, SourceText after, SourceText now, SourceText undone)
    {
        var sum = new Dictionary<string, int>(StringComparer.Ordinal);
        Count(before, +1);
        Count(after, -1);
        Count(now, +1);
        Count(undone, -1);
        return sum.Values.All(n => n == 0);

        void Count(SourceText text, int by)
        {
            foreach (var word in Words(Tree.Read(text).Root, ""))
            {
                sum[word] = sum.GetValueOrDefault(word) + by;
            }
        }
    }

    private static IEnumerable<string> Words(Node node, string under) => node switch
    {
        Node.Map map => map.Entries.SelectMany(e => Words(e.Value, $"{under}/{e.Key.Text}").Prepend($"{under}/{e.Key.Text}")),
        Node.List list => list.Items.SelectMany(i => Words(i, under + "/-")),
        Node.Scalar { IsEmpty: false } word => [$"{under}: {word.Text}"],
        _ => [],
    };
}

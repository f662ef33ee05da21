namespace Loomwright.ProjectFile;

/// <summary>The entries or items of a section, none when it is left out or empty.</summary>
internal static class Sections
{
    public static IEnumerable<Entry> Map(Node? node, string key, Found found)
    {
        if (node is Node.Map map)
        {
            return map.Entries.Where(e => !e.Key.Text.StartsWith("x-", StringComparison.OrdinalIgnoreCase));
        }

        if (node is not (null or Node.Scalar { IsEmpty: true }))
        {
            FormReader.WrongShape(node, "“" + key + "”", "names with what is said of them, one below the other", found);
        }

        return [];
    }

    public static IEnumerable<Node> List(Node? node, string key, Found found)
    {
        if (node is Node.List list)
        {
            return list.Items;
        }

        if (node is not (null or Node.Scalar { IsEmpty: true }))
        {
            FormReader.WrongShape(node, "“" + key + "”", "a list, each item with a dash before it", found);
        }

        return [];
    }
}

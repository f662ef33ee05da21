using System.Globalization;
using Loomwright.ProjectFile;

namespace Loomwright.Tests.ProjectFile;

/// <summary>The dumb model: nested lists that are changed where they stand.</summary>
internal static class DumbModel
{
    public static List<object> Of(Node node) => node switch
    {
        Node.Map map => ["map", .. map.Entries.SelectMany(e => new object[] { e.Key.Text, Of(e.Value) })],
        Node.List list => ["list", .. list.Items.Select(Of)],
        _ => ["word", ((Node.Scalar)node).Text],
    };

    public static void Make(List<object> root, Edit edit)
    {
        var at = root;
        List<object>? above = null;
        var place = -1;
        foreach (var step in edit.At.ToString().Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            above = at;
            place = (string)at[0] == "map" ? at.FindIndex(1, o => o is string s && s == step) + 1 : 1 + int.Parse(step, CultureInfo.InvariantCulture);
            at = (List<object>)at[place];
        }

        switch (edit)
        {
            case Edit.Replace replace:
                above![place] = Of(replace.Value);
                break;
            case Edit.Remove when (string)above![0] == "map":
                above.RemoveRange(place - 1, 2);
                break;
            case Edit.Remove:
                above.RemoveAt(place);
                break;
            case Edit.AddKey add:
                Become(at, "map");
                at.InsertRange(add.First ? 1 : at.Count, [add.Key, Of(add.Value)]);
                break;
            case Edit.AddItem add:
                Become(at, "list");
                at.Add(Of(add.Value));
                break;
        }
    }

    public static string Show(List<object> node) => "(" + string.Join('|', node.Select(o => o is List<object> inner ? Show(inner) : (string)o)) + ")";

    private static void Become(List<object> at, string shape)
    {
        if ((string)at[0] == "word")
        {
            at.Clear();
            at.Add(shape);
        }
    }
}

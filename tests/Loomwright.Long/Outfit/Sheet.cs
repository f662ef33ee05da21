using System.Globalization;
using System.Text;

namespace Loomwright.Long.Outfit;

/// <summary>Collects parts, wires and functions and writes them as a design file; lengths come from where the places lie.</summary>
internal sealed class Sheet
{
    // Slack at both ends together.
    private const int SlackCentimetres = 15;

    private readonly Dictionary<string, (int Along, int Across, string Words)> _places = [];
    private readonly Dictionary<string, string> _placeOf = [];
    private readonly Dictionary<string, int> _cavities = [];
    private readonly StringBuilder _parts = new();
    private readonly StringBuilder _wires = new();
    private readonly StringBuilder _functions = new();

    public int WireCount { get; private set; }

    /// <summary>A place by its centimetres behind the headlamp and to the right of the bike.</summary>
    public void Place(string name, int along, int across, string words) => _places.Add(name, (along, across, words));

    public void Heading(string words)
    {
        _parts.Append(CultureInfo.InvariantCulture, $"\n  # ---- {words}\n\n");
        _wires.Append(CultureInfo.InvariantCulture, $"\n  # ---- {words}\n\n");
    }

    /// <summary>A part on one line.</summary>
    public void Part(string name, string kind, string place, string settings = "")
    {
        _placeOf.Add(name, place);
        _parts.Append(CultureInfo.InvariantCulture, $"  {name}: {{kind: {kind}, place: {place}{(settings.Length > 0 ? ", " + settings : "")}}}\n");
    }

    /// <summary>A part on several lines, indented as it stands.</summary>
    public void Block(string name, string kind, string place, string settings)
    {
        _placeOf.Add(name, place);
        _parts.Append(CultureInfo.InvariantCulture, $"  {name}:\n    kind: {kind}\n    place: {place}\n{settings}");
    }

    /// <summary>A plug whose cavities are counted as leads go through it.</summary>
    public void Plug(string name, string place)
    {
        _placeOf.Add(name, place);
        _cavities.Add(name, 0);
    }

    /// <summary>A lead from terminal to terminal through the next free cavity of each plug on its way.</summary>
    public void Lead(string name, string from, string to, double squareMillimetres, string colour, params string[] plugs)
    {
        var at = from;
        for (var p = 0; p < plugs.Length; p++)
        {
            var cavity = ++_cavities[plugs[p]];
            Wire(FormattableString.Invariant($"{name} {p + 1}"), at, FormattableString.Invariant($"{plugs[p]}.{cavity}a"), squareMillimetres, colour);
            at = FormattableString.Invariant($"{plugs[p]}.{cavity}b");
        }

        Wire(plugs.Length == 0 ? name : FormattableString.Invariant($"{name} {plugs.Length + 1}"), at, to, squareMillimetres, colour);
    }

    public void Function(string name, string works, string symbol, params string[] shows)
    {
        _functions.Append(CultureInfo.InvariantCulture, $"  {name}:\n    works: {works}\n    shows:\n");
        foreach (var shown in shows)
        {
            _functions.Append(CultureInfo.InvariantCulture, $"      {shown}: {symbol}\n");
        }

        // Nothing else takes so much that the lamps tell.
        if (shows.Contains("starter"))
        {
            _functions.Append("    may:\n      all lamps: dim\n");
        }
    }

    public string Text(string head)
    {
        var text = new StringBuilder(head).Append("\nplaces:\n");
        foreach (var (name, place) in _places)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {name}: {{name: {place.Words}}}\n");
        }

        text.Append("\nparts:\n").Append(_parts).Append("\n  # ---- plugs\n\n");
        foreach (var (plug, count) in _cavities)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {plug}: {{kind: connector, place: {_placeOf[plug]}, terminal size: 6.3 mm, cavities: [{string.Join(", ", Enumerable.Range(1, count))}]}}\n");
        }

        return text.Append("\nwires:\n").Append(_wires).Append("\nfunctions:\n").Append(_functions).ToString();
    }

    private void Wire(string name, string from, string to, double squareMillimetres, string colour)
    {
        WireCount++;
        _wires.Append(CultureInfo.InvariantCulture, $"  - {{name: {name}, from: {from}, to: {to}, size: {squareMillimetres} mm2, colour: {colour}, length: {Centimetres(from, to)} cm}}\n");
    }

    private int Centimetres(string from, string to)
    {
        var (a, b) = (At(from), At(to));
        return Math.Abs(a.Along - b.Along) + Math.Abs(a.Across - b.Across) + SlackCentimetres;
    }

    private (int Along, int Across, string Words) At(string terminal) => _places[_placeOf[terminal.Split('.')[0]]];
}

using System.Globalization;
using Loomwright.Findings;
using Loomwright.Web.Check;

namespace Loomwright.Web.Bikes;

/// <summary>How many things are open, in words.</summary>
internal static class OpenPoints
{
    public static string Of(IReadOnlyCollection<Found> found)
    {
        var stop = found.Count(f => f.Finding.Severity == Severity.Stop);
        var look = found.Count(f => f.Finding.Severity == Severity.Look);
        return (stop, look) switch
        {
            (0, 0) => "No open points.",
            (0, _) => Text($"{Points(look)}."),
            (_, _) => Text($"{Points(stop + look)}, {stop} to stop for."),
        };
    }

    private static string Points(int count) => count == 1 ? "1 open point" : Text($"{count} open points");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

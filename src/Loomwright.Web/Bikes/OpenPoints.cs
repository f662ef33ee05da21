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
        var note = found.Count - stop - look;
        var told = new[] { Of(stop, "to stop for"), Of(look, "to look at"), Of(note, note == 1 ? "note" : "notes") }.OfType<string>().ToList();
        return told.Count == 0 ? "No open points." : $"{string.Join(", ", told)}.";
    }

    private static string? Of(int count, string what) => count == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{count} {what}");
}

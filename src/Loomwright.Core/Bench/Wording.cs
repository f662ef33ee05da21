using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Bench;

/// <summary>What a stage is called and why it comes when it does.</summary>
internal static class Wording
{
    public static string Title(Site site) => site.Line switch
    {
        { Loads.IsEmpty: true, Box: not null } line => $"{line.Name} alone",
        { Loads.IsEmpty: true } line => $"{line.Name} alone, no load",
        var line when line.Name == site.Previous?.Name => $"{line.Name}, {string.Join(", ", line.Loads.Select(Spoken.Of))} too",
        var line => line.Name,
    };

    /// <param name="site">The stage.</param>
    /// <param name="isSupplyTooSmall">Whether the bench supply is at its limit in it.</param>
    public static string Why(Site site, bool isSupplyTooSmall) =>
        (isSupplyTooSmall ? $"Do not power this stage from this supply: {new Current(site.Model(site.Whole.Source!.Name).Supply!.LimitAmps!.Value)} is too small. " : "") + Why(site);

    private static string Why(Site site)
    {
        if (site.Line.Loads.IsEmpty)
        {
            return site.Line.Box is not null
                ? "If it does not wake, nothing behind it can work; and what it draws by itself is known before any load hides it." + Assumed(site.Whole.Loom.Part(site.Line.Box)!)
                : "If the feed is dead here, nothing behind it can work.";
        }

        var known = site.NewsBefore;
        var news = site.Line.News.Where(n => !known.Contains(n)).ToList();
        var steady = site.Previous?.Loads.IsEmpty != true ? ""
            : site.Line.News.Any(n => n.Contains("output", StringComparison.Ordinal)) ? "One load shows its feed and its way back at once. "
            : "One steady load shows its feed and its way back at once. ";
        return news.Count == 0
            ? steady + "Nothing of a new kind: one more circuit of what has already worked."
            : $"{steady}New here: {string.Join(", ", news)}. All else has worked before.";
    }

    // A default of the kind is no fact of the owner's box.
    private static string Assumed(Part box) => box.Settings.Number(ControllerSupply.AwakeDraw.Key) is not null ? ""
        : $" What it draws awake is not in the file: {new Current(ControllerSupply.AwakeDraw.Of(box.Settings))} is assumed.";
}

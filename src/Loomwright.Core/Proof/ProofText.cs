using System.Globalization;
using System.Text;

namespace Loomwright.Proof;

/// <summary>What a plan catches, as plain text. Same plan, same bytes; lines end in <c>\n</c>.</summary>
public static class ProofText
{
    // A list that nobody reads to its end helps nobody.
    private const int MostListed = 12;

    /// <summary>Harm first, then what is seen and what is not.</summary>
    public static string Of(Proven proven)
    {
        var text = new StringBuilder();
        Harm(text, proven.Harm);
        Seen(text, proven);
        return text.ToString();
    }

    /// <summary>A class of faults as a heading.</summary>
    public static string Words(SeenBy seenBy) => seenBy switch
    {
        SeenBy.Two => "seen by two checks or more",
        SeenBy.One => "seen by one check",
        SeenBy.NoEffectNow => "no effect now (doubled, or in a lead that carries next to nothing)",
        SeenBy.NotReached => "not reached: no stage connects it",
        SeenBy.NeedsAMeter => "needs a meter where the plan does not read",
        _ => throw new InvalidOperationException("a class of no known form"),
    };

    private static void Harm(StringBuilder text, HarmList harm)
    {
        Line(text, "What a single mistake could harm");
        Say(text, $"  {harm.Faults.Length} single mistakes do harm in some state of this plan: {harm.Count(Fate.Caught)} are caught before power, {harm.Count(Fate.Limited)} are limited by the small fuse and show there, {harm.Count(Fate.Open)} stay open.");
        foreach (var kind in harm.Possible)
        {
            Say(text, $"  {HarmWords.Of(kind)}: {harm.Count(kind)} (caught {harm.Count(kind, Fate.Caught)}, limited {harm.Count(kind, Fate.Limited)}, open {harm.Count(kind, Fate.Open)})");
        }

        Line(text, "  A mistake that does several is counted in each.");
        foreach (var open in harm.Faults.Where(f => f.Fate == Fate.Open))
        {
            Say(text, $"  Open: {open.Fault}, from {open.Step}: {string.Join(", ", open.Kinds.Select(HarmWords.Of))}. {open.Precaution}");
        }
    }

    private static void Seen(StringBuilder text, Proven proven)
    {
        var coverage = proven.Coverage;
        Line(text, "");
        Line(text, "What this plan sees");
        Say(text, $"  {Percent(coverage.Seen)} of {coverage.Faults.Length} single mistakes; operating everything and looking would see {Percent(coverage.SeenByLooking)}.");
        foreach (var seenBy in Enum.GetValues<SeenBy>())
        {
            Say(text, $"  {Words(seenBy)}: {coverage.Count(seenBy)}{(seenBy is SeenBy.Two or SeenBy.One ? "" : Listed(coverage.Faults.Where(f => f.SeenBy == seenBy).Select(f => f.Fault.ToString())))}");
        }

        foreach (var why in coverage.Faults.Where(f => f.WhyOnce is not null).GroupBy(f => f.WhyOnce!))
        {
            Say(text, $"  Seen once: {why.Count()}, {why.Key}{Listed(why.Select(f => f.Fault.ToString()))}");
        }

        foreach (var stage in proven.Plan.Stages)
        {
            var lost = coverage.LostWithout(stage.Number).Select(f => f.ToString()).ToList();
            Say(text, $"  Without stage {stage.Number} ({stage.Title}) and its repeat in the next: {lost.Count} no longer seen{Listed(lost)}");
        }
    }

    private static string Listed(IEnumerable<string> names)
    {
        var all = names.ToList();
        var more = all.Count > MostListed ? FormattableString.Invariant($"; and {all.Count - MostListed} more") : "";
        return all.Count == 0 ? "" : $": {string.Join("; ", all.Take(MostListed))}{more}";
    }

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{share * 100:0.0} %");

    private static void Say(StringBuilder text, FormattableString line) => text.Append(FormattableString.Invariant(line)).Append('\n');

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Parts;

namespace Loomwright.Diagnosis;

/// <summary>Questions and answers in the words a person at the bench uses.</summary>
public static class TroubleText
{
    /// <summary>What to operate before looking.</summary>
    public static string Do(TroubleTable table, Asked asked) => asked.Stimulus is { } stimulus ? table.Table.Stimuli[stimulus].Name : asked.Check is { } check ? table.FirstOff(check) : "key off, main fuse out";

    /// <summary>What to look at or measure.</summary>
    public static string Ask(TroubleTable table, Question question) => question switch
    {
        Question.Volts volts => $"volts, red probe on {table.Table.Points[volts.Red]}, black on {Black(table, volts.Black)}",
        Question.Of check => table.Ask(check.Check),
        _ => "what lights, sounds or clicks, and what does not?",
    };

    /// <summary>That blown fuses stay out while something with power on is asked.</summary>
    public static string StaysOut(ImmutableArray<string> blown) => $"{string.Join(" and ", blown)} {(blown.Length == 1 ? "stays" : "stay")} out for this: no new fuse goes in before the cause is found.";

    /// <summary>That the answers contradict each other, and which goes worst with the rest.</summary>
    public static string Contradicts(TroubleTable table, Evidence answer) =>
        $"The answers do not fit together: nothing in the list goes with all of them. The most surprising is: {Of(table, answer)}. Read that again before you mend anything.";

    /// <summary>Why an answer that does not fit is not asked for again.</summary>
    public static string NotRepeated(TroubleTable table, Evidence answer) =>
        $"This does not fit the rest: {Of(table, answer)}. It is not to be done again: by what was seen or is likely now it could blow a fuse or burn something.";

    /// <summary>That something got hot before, and what that means for the order of work.</summary>
    /// <param name="table">What is searched in.</param>
    /// <param name="called">What the thing that got hot is called where it begins a sentence; null for its own name.</param>
    public static string HotBefore(TroubleTable table, string? called = null) =>
        $"{((called ?? table.HotThing) is { } thing ? $"{thing} got hot" : "Something got hot, smoked or smelt")} before, and nothing was found mended: what can be looked at without power comes first.";

    /// <summary>That what was not as expected before power keeps it off, in the search too.</summary>
    public const string PowerStaysOff = "Power off, and off it stays until this is mended: nothing is asked here but what is looked at without it.";

    /// <summary>Of every setting that a hypothesis has otherwise than designed, where to look and what it may stand at, as a sentence.</summary>
    /// <param name="loom">The bike as designed, or what a stage has connected of it.</param>
    /// <param name="hypothesis">What may be wrong.</param>
    /// <param name="smallAmps">Rating of the small fuse a stage has for now; null where every fuse is the one that stays.</param>
    public static ImmutableArray<string> Settings(Loom loom, Hypothesis hypothesis, double? smallAmps = null) =>
    [
        .. from setting in hypothesis.Faults.Where(f => !f.Repair.StartsWith("charge ", StringComparison.Ordinal)).Select(f => f.Fault).OfType<Fault.Setting>()
           let part = loom.Part(setting.Part)
           where part is not null
           select Otherwise(part, setting, smallAmps),
    ];

    // A switch at rest is told by what it does, not by how its setting is written.
    private static string Otherwise(Part part, Fault.Setting setting, double? smallAmps)
    {
        var model = Kinds.Find(part.Kind)?.Build(part);
        if (setting.Key == "rests" && model?.Controls is [var control, ..])
        {
            var (rest, away) = (Word(control.Rest), string.Join(" or ", control.Positions.Where(p => p != control.Rest).Select(Word)));
            var (on, off) = setting.Value == "closed" ? (rest, away) : (away, rest);
            return $"{part.Name} is on when {on} and off when {off}: wrong type, or its adjustment.";
        }

        var (sight, key) = ($"Look at {(model?.Controller is null ? "" : "what is set in ")}{part.Name}", Repairs.Setting(setting.Key));
        var small = part.Kind == "fuse" && smallAmps is { } amps && part.Settings.Number(setting.Key) is { } rating && Math.Abs(rating - amps) < 1e-9 ? ", the small one of this stage" : "";
        return OtherSetting.Options(part, setting.Key).Remove(setting.Value) is [var designed]
            ? $"{sight}: {key} is to be “{designed}”. It may stand at “{setting.Value}”."
            : $"{sight}: {key} is to be {OtherSetting.Designed(part, setting.Key) ?? "as the design has it"}{small}. It may be {(model?.Controller is null ? "" : "set to ")}{setting.Value}.";

        static string Word(string position) => position == "released" ? "let go" : position;
    }

    /// <summary>A share in whole percent, as it is shown.</summary>
    /// <param name="share">0…1.</param>
    public static string Percent(double share) => share < 0.01 ? "below 1 %" : FormattableString.Invariant($"{share * 100:0} %");

    /// <summary>What is left of the shares besides those shown and something that is not in the list, as a sentence; null where that is less than one in a hundred.</summary>
    /// <param name="trouble">The search.</param>
    /// <param name="shown">What is shown of it.</param>
    public static string? More(Trouble trouble, IReadOnlyCollection<Suspect> shown)
    {
        var left = 1 - trouble.SomethingElse - shown.Sum(s => s.Share);
        var more = trouble.Table.Singles.Select(h => h.Repair).Except(shown.Select(s => s.Repair), StringComparer.Ordinal).Count();
        var others = FormattableString.Invariant($"{more} {(more == 1 ? "other" : "others together")} {Percent(left)}.");
        return left < 0.01 ? null : trouble.State == Search.GoesOn && left > shown.Max(s => s.Share) ? $"Too early to tell: {others} Answer on." : others;
    }

    /// <summary>What comes before power after a repair.</summary>
    public static string Mended() => "After a repair, before power: measure the ohms of the plan again, from plus to ground first. Main fuse back in, minus on the battery last. Then the state that was wrong, before anything else.";

    /// <summary>Why nothing is asked any more where it got hot.</summary>
    /// <param name="table">What it is asked of.</param>
    /// <param name="stimulus">What was done last then, by its place.</param>
    public static string Hot(TroubleTable table, int stimulus) =>
        $"With {Do(table, new Asked(stimulus))} it got hot, smoked or smelt: that is not to be done again before something is mended.";

    /// <summary>An answer, with what was done.</summary>
    public static string Of(TroubleTable table, Evidence answer) => answer switch
    {
        Evidence.Checked found => $"{found.Check.Name}: {found.Found ?? Check.AsDesigned}",
        Evidence.NotSure { About.Check: { } check } => $"{check.Name}: not sure",
        Evidence.Seen seen => $"{Do(table, seen.Place)}: {(Differing(table, seen) is { Count: > 0 } odd ? string.Join(", ", odd.Select(s => Why.Told(table, s.Observable, s.Sign))) : "all as it should be")}",
        Evidence.Measured read => FormattableString.Invariant($"{Do(table, read.Place)}: {read.Volts:0.0#} V from {table.Table.Points[read.Red]} to {Black(table, read.Black)}"),
        Evidence.NotSure { About: { Red: { } red, Black: var black } } => $"{Do(table, answer.Place)}: not sure of the volts from {table.Table.Points[red]} to {Black(table, black)}",
        _ => $"{Do(table, answer.Place)}: not sure",
    };

    internal static string Black(TroubleTable table, int? black) => black is { } point ? table.Table.Points[point].ToString() : "battery minus";

    // Of many signs those that are not as they should be say enough.
    private static List<(int Observable, byte Sign)> Differing(TroubleTable table, Evidence.Seen seen)
    {
        var healthy = table.Singles[0].Looks[seen.Stimulus].Signs;
        return [.. seen.Signs.Where(s => healthy.IsEmpty || healthy[s.Observable] != s.Sign || seen.Signs.Length <= 3)];
    }
}

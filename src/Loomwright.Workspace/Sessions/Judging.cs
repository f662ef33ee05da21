using System.Globalization;
using Loomwright.Bench;
using Loomwright.Quantities;
using Loomwright.Records;

namespace Loomwright.Sessions;

/// <summary>Holds an answer against what the plan expects at its step.</summary>
public static class Judging
{
    /// <summary>What the three answers are called.</summary>
    public const string Yes = "as expected";
    public const string No = "not";
    public const string Unsure = "not sure";

    /// <summary>What is told of something hot where nobody knows what it was.</summary>
    public const string Unknown = "unknown";

    /// <summary>What a meter shows that reads nothing.</summary>
    public const string NoReading = "OL";

    // Two marks of eighty letters each, and the words between.
    private const int LongestText = 400;

    /// <summary>The gate "Ready for power?" of a stage, where a step's id stands.</summary>
    public static string Gate(Stage stage) => string.Create(CultureInfo.InvariantCulture, $"s{stage.Number}.gate");

    /// <summary>The entry to keep; what fits no step of the plan is kept as it was given, without a verdict. Null when it is not an answer at all.</summary>
    public static Entry? Of(Plan plan, string session, Given given)
    {
        var (what, raw) = (given.What ?? "", given.Raw ?? "");
        if (given.Id is not { Length: > 0 and <= 64 } || given.Step is not { Length: <= LongestText } || what.Length > LongestText || raw.Length > LongestText || given.Of?.Length > 64 || !Enum.IsDefined(given.Kind))
        {
            return null;
        }

        var step = plan.Stages.SelectMany(s => s.Steps).FirstOrDefault(s => s.Id == given.Step);
        var entry = new Entry(given.Id, session, given.Step, given.Kind, About(step), what, raw, null, null, null, null, Verdict.None, given.Of, given.At);
        return given.Kind switch
        {
            EntryKind.Reading when step?.Expect.FirstOrDefault(e => e.What == what)?.Band is { } band => Reading(entry, band),
            EntryKind.Seen => entry with { Verdict = raw switch { Yes => Verdict.AsExpected, No => Verdict.Not, Unsure => Verdict.NotSure, _ => Verdict.None } },
            EntryKind.Hot => entry with { Verdict = Verdict.Not },
            _ => entry,
        };
    }

    private static Entry Reading(Entry entry, Band band)
    {
        var against = entry with { Unit = band.Unit.ToString(), Least = band.Least, Most = band.Most };
        if (band.Unit == Unit.Ohm && string.Equals(entry.Raw.Trim(), NoReading, StringComparison.OrdinalIgnoreCase))
        {
            return against with { Verdict = band.Most is null ? Verdict.AsExpected : Verdict.Not };
        }

        return Read(entry.Raw, band.Unit) is Typed.Quantity { Si: var value }
            ? against with { Value = value, Verdict = value < band.Least || value > band.Most ? Verdict.Not : Verdict.AsExpected }
            : against with { Verdict = Verdict.Unreadable };
    }

    // As a meter shows it, the letter before the unit alone will do: 1.2k.
    private static Typed Read(string raw, Unit unit) =>
        raw.Trim() is [.., 'k' or 'm' or 'M' or 'µ'] letter && Typed.Read(letter + unit switch { Unit.Ohm => "Ω", Unit.Amp => "A", Unit.Volt => "V", _ => "" }, unit) is Typed.Quantity read ? read : Typed.Read(raw, unit);

    private static string About(Step? step) =>
        step is null ? "" : step.Wire ?? step.Part ?? (step.Marks is [var first, ..] ? first.Terminal.ToString() : "");
}

using Loomwright.Bench;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Proof;
using Loomwright.Quantities;
using Loomwright.Records;
using Entry = Loomwright.Records.Entry;

namespace Loomwright.Sessions;

/// <summary>What a stage's answers say that is neither looks nor volts: ohms before power, amps, hot; and all of them in sentences.</summary>
/// <param name="stage">The stage.</param>
/// <param name="round">What was answered since the last change.</param>
internal sealed class Told(Stage stage, IReadOnlyList<Entry> round)
{
    // How a reading goes with a fault that would have it otherwise; a hand slips, a meter is read wrongly (judgement, no source).
    private const double OutsideUnexplained = 0.02, InsideAgainst = 0.1, WrongSide = 0.05;

    // What is wrong is mostly at what got hot, and now and then further along (judgement, no source).
    private const double Elsewhere = 0.3;

    private readonly List<Entry> _readings = [.. round.Where(e => e.Kind == EntryKind.Reading && e.Verdict is Verdict.AsExpected or Verdict.Not).GroupBy(e => (e.Step, e.What)).Select(g => g.Last())];

    /// <summary>The table with every fault weighed by how it goes with that.</summary>
    public TroubleTable Weigh(TroubleTable table)
    {
        var sights = Sights.Of(stage);
        int? Place(Entry entry) => sights.At(entry.Step) is { } done ? table.Place(done) : null;
        var ohms = _readings.Where(e => e.Unit == nameof(Unit.Ohm)).ToList();
        var amps = _readings.Where(e => e.Unit == nameof(Unit.Amp)).Select(e => (Reading: e, Place: Place(e))).Where(e => e.Place is not null).ToList();
        var hot = round.Where(e => e.Kind == EntryKind.Hot).Select(Place).OfType<int>().Distinct().ToList();
        var things = round.Where(e => e is { Kind: EntryKind.Hot, Raw.Length: > 0 }).Select(e => e.Raw).Where(t => t != Judging.Unknown).ToList();
        var before = ohms.Count == 0 && things.Count == 0 ? null : new BeforePower(stage);
        return hot.Aggregate(round.Any(e => e.Kind == EntryKind.Hot) ? table.Heated(things.LastOrDefault()) : table, (t, place) => t.Hot(place)).Weighed(h =>
        {
            var outside = h.Faults.IsEmpty ? null : before?.Outside(h.Faults[0].Fault);
            return (things.Count == 0 || h.Faults.IsEmpty || things.Exists(t => before!.IsAt(h.Faults[0].Fault, t)) ? 1 : Elsewhere)
                * ohms.Aggregate(1.0, (by, e) => by * Goes(e, outside is not null && outside.TryGetValue(e.Step, out var shows) ? shows : null))
                * amps.Aggregate(1.0, (by, e) => by * Goes(e.Reading, Outside(e.Reading, h.Looks[e.Place!.Value])));
        });
    }

    /// <summary>What was told, for a person to see that nothing is to be said twice.</summary>
    public IEnumerable<string> Sentences()
    {
        var sights = Sights.Of(stage);
        var fine = round.Where(e => e.Kind == EntryKind.Seen).GroupBy(e => e.Step).Count(g => g.Last().Verdict == Verdict.AsExpected);
        if (fine > 0)
        {
            yield return fine == 1 ? "One check of this stage was as expected." : FormattableString.Invariant($"{fine} checks of this stage were as expected.");
        }

        foreach (var step in stage.Steps)
        {
            var given = round.Where(e => e.Step == step.Id).ToList();
            foreach (var read in _readings.Where(e => e.Step == step.Id && e.Verdict == Verdict.Not))
            {
                yield return $"{read.What} read {WithUnit(read)}, expected {step.Expect.First(e => e.What == read.What).Shows}.";
            }

            var instead = given.Where(e => e is { Kind: EntryKind.Reading, Unit: null }).GroupBy(e => e.What).Select(g => g.Last()).ToList();
            foreach (var seen in instead)
            {
                var o = Enumerable.Range(0, sights.What.Length).Where(i => sights.What[i].Name == seen.What).Select(i => (int?)i).FirstOrDefault();
                yield return $"{Simulation.Words.Name(seen.What)}: {seen.Raw}{(o is { } at && !sights.Should(step.Id).IsEmpty ? $", expected {sights.What[at].Word(sights.Should(step.Id)[at])}" : "")}.";
            }

            if (given.Exists(e => e.Kind == EntryKind.Hot))
            {
                yield return $"Hot, smoke or smell: {step.Text}";
                if (given.Last(e => e.Kind == EntryKind.Hot) is { Raw.Length: > 0 } hot)
                {
                    yield return $"What got hot: {TestRecord.Hot(stage, hot)}.";
                }
            }
        }
    }

    // A number typed alone was meant in the unit asked for.
    private static string WithUnit(Entry read) =>
        !Enum.TryParse<Unit>(read.Unit, out var unit) || Typed.Read(read.Raw, unit) is not Typed.Quantity { Bare: true } ? read.Raw
        : read.Raw.Trim() + unit switch { Unit.Volt => " V", Unit.Amp => " A", Unit.Ohm => " Ω", _ => "" };

    private static double? Outside(Entry reading, Look look) =>
        look.Signs.IsEmpty || (look.SupplyAmps >= (reading.Least ?? double.NegativeInfinity) && look.SupplyAmps <= (reading.Most ?? double.PositiveInfinity)) ? null : look.SupplyAmps;

    // Shows: what the fault makes it read, where that is outside the band; else null.
    private static double Goes(Entry reading, double? shows) => (reading.Verdict, shows) switch
    {
        (Verdict.Not, null) => OutsideUnexplained,
        (Verdict.Not, { } value) => IsAbove(reading, reading.Value ?? double.PositiveInfinity) == IsAbove(reading, value) ? 1 : WrongSide,
        (_, null) => 1,
        _ => InsideAgainst,
    };

    private static bool IsAbove(Entry reading, double value) => value > (reading.Most ?? double.PositiveInfinity) || (reading.Most is null && double.IsPositiveInfinity(value));
}

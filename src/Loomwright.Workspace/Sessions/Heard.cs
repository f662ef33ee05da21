using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Quantities;
using Loomwright.Records;
using Entry = Loomwright.Records.Entry;

namespace Loomwright.Sessions;

/// <summary>What a stage's answers say of looks and volts, as a search takes it.</summary>
internal static class Heard
{
    /// <summary>In the plan's order; of what was answered twice under the same doings the last.</summary>
    public static ImmutableArray<Evidence> Of(Stage stage, TroubleTable table, IReadOnlyList<Entry> round)
    {
        var sights = Sights.Of(stage);
        var all = new List<Evidence>();
        foreach (var step in stage.Steps)
        {
            if (sights.At(step.Id) is not { } done || table.Place(done) is not { } place)
            {
                continue;
            }

            var given = round.Where(e => e.Step == step.Id).ToList();
            all.AddRange([.. Seen(step, place, sights, given), .. Measured(step, place, table, given)]);
        }

        return [.. all.GroupBy(e => e.Place).Select(g => g.Last())];
    }

    private static IEnumerable<Evidence> Seen(Step step, int place, Sights sights, List<Entry> given)
    {
        if (given.LastOrDefault(e => e.Kind == EntryKind.Seen) is not { Verdict: Verdict.AsExpected or Verdict.Not } seen)
        {
            yield break;
        }

        var should = sights.Should(step.Id);
        var instead = given.Where(e => e.Kind == EntryKind.Reading).Select(e => Sign(sights, e)).OfType<(int, byte)>().GroupBy(s => s.Item1).ToDictionary(g => g.Key, g => g.Last().Item2);
        if (should.IsEmpty || (seen.Verdict == Verdict.Not && instead.Count == 0))
        {
            yield break;
        }

        // With the meter in hand the eye is on what is measured; else on everything that shows.
        var looked = Enumerable.Range(0, should.Length).Where(o => instead.ContainsKey(o)
            || (step.Meter is null ? sights.What[o].Sense is Sense.Sight or Sense.BoxLight : step.Expect.Any(e => e.What == sights.What[o].Name)));
        ImmutableArray<(int, byte)> signs = [.. looked.Select(o => (o, instead.GetValueOrDefault(o, should[o])))];
        if (!signs.IsEmpty)
        {
            yield return new Evidence.Seen(place, signs);
        }
    }

    private static IEnumerable<Evidence> Measured(Step step, int place, TroubleTable table, List<Entry> given)
    {
        var read = given.LastOrDefault(e => e is { Kind: EntryKind.Reading, Unit: nameof(Unit.Volt), Value: not null });
        if (step.Meter is { Dial: Dial.Volts } card && read is not null)
        {
            var (red, black) = (table.Table.Points.IndexOf(card.RedTip.Terminal), table.Table.Points.IndexOf(card.BlackTip.Terminal));
            if (red >= 0 && black >= 0)
            {
                yield return new Evidence.Measured(place, red, black, read.Value!.Value);
            }
        }
    }

    private static (int, byte)? Sign(Sights sights, Entry entry)
    {
        for (var o = 0; o < sights.What.Length; o++)
        {
            if (sights.What[o].Name == entry.What)
            {
                return sights.Words(o).Where(w => w.Word == entry.Raw).Select(w => ((int, byte)?)(o, w.Sign)).FirstOrDefault();
            }
        }

        return null;
    }
}

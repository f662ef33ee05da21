using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Loomwright.Bench;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Records;
using Loomwright.Simulation;
using Entry = Loomwright.Records.Entry;

namespace Loomwright.Sessions;

/// <summary>A search for a cause that begins where a step was not as expected, with all the stage has told so far.</summary>
/// <param name="Session">Id of the session.</param>
/// <param name="Stage">The stage, with the design of exactly what is connected.</param>
/// <param name="Step">The step that was not as expected.</param>
/// <param name="Search">What may be wrong by it.</param>
/// <param name="Told">What was handed over, in sentences.</param>
/// <param name="Round">How many changes there were in the stage before.</param>
public sealed record Handover(string Session, Stage Stage, Step Step, Trouble Search, ImmutableArray<string> Told, int Round)
{
    private static readonly ConditionalWeakTable<Stage, TroubleTable> Tables = [];

    /// <summary>What was done up to the step, by its place in the search's table; null before power.</summary>
    public int? Done { get; } = Sights.Of(Stage).At(Step.Id) is { } done ? Search.Table.Place(done) : null;

    /// <summary>Whether the search knows how that step looked, or is not to ask: where it got hot nobody looks again.</summary>
    public bool IsTold => Step.Meter is not null || Done is null || Search.Table.GotHot || Search.Answers.Any(a => a.Place.Stimulus == Done);

    /// <summary>
    /// What a hand does, in the words of the stage's steps, so that all stands as something done (by its place in the search's table)
    /// has it: what is set in it, what the step left elsewhere than at rest, and every lead that stands in for a switch.
    /// </summary>
    public ImmutableArray<string> ByHand(int stimulus)
    {
        var (wanted, left) = (Positions(stimulus), Done is { } done ? Positions(done) : []);

        // The shortest says the move alone, without what is read or how long a press may last there.
        var moves = Stage.Steps.Where(s => s is { Do: not null, PowerOn: true, Meter: null }).OrderBy(s => s.Text.Length).ToLookup(s => s.Do!, s => s.Text);
        var rests = moves.Select(m => m.Key.Control).Distinct().Where(c => !wanted.ContainsKey(c) && (left.ContainsKey(c) || Stage.Lying(c) != c))
            .SelectMany(c => Stage.Connected.Parts.SelectMany(p => Bike.Model(p).Controls).Where(k => k.Name == c).Take(1).Select(k => new Operation.Set(c, k.Rest)));
        return [.. rests.Concat(wanted.Select(w => new Operation.Set(w.Key, w.Value))).SelectMany(set => moves[set].Take(1))];
    }

    /// <summary>What brings power on in the stage, in order, up to the first hand on a control.</summary>
    public ImmutableArray<string> PowerOn =>
    [
        .. Stage.FirstFuse.Rating.Amps > 0 ? [$"The fuse of this stage in: {Stage.FirstFuse.Rating.Printed}{(Stage.FirstFuse.BodyColour.Length > 0 ? $", {Stage.FirstFuse.BodyColour}" : "")}{(Stage.FirstFuse.Stays ? "" : ", the small one")}."] : ImmutableArray<string>.Empty,
        .. Stage.Steps.Where(s => s is { Act: Act.PowerUp, Do: null, Meter: null }).Select(s => s.Text),
    ];

    // What was wrong there keeps power off, in the search too: a check of a stage without power, one before the gate, the supply measured by itself.
    private static bool IsBeforePower(Stage stage, Step step) => stage.Steps.FirstOrDefault(s => s.Act == Act.PowerUp) is not { } first
        || stage.Steps.IndexOf(step) < stage.Steps.IndexOf(first) || (step == first && step is { Do: null, Meter.Dial: Dial.Volts });

    private Dictionary<string, string> Positions(int stimulus) =>
        Search.Table.Table.Stimuli[stimulus].Operations.OfType<Operation.Set>().GroupBy(o => o.Control).ToDictionary(g => g.Key, g => g.Last().Position);

    /// <summary>Puts together what a session's entries tell of a stage. After a repair the search goes on without that fault; after an unnamed change it begins anew.</summary>
    public static Handover Of(string session, Stage stage, Step step, IReadOnlyList<Entry> entries)
    {
        var steps = stage.Steps.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        var fresh = Tables.GetValue(stage, s => TroubleTable.Of(s.Connected, Sights.Of(s).Done));
        var table = fresh;
        var round = new List<Entry>();
        var (heated, thing) = (false, (string?)null);
        var (told, changes) = (ImmutableArray.CreateBuilder<string>(), 0);
        foreach (var entry in TestRecord.NotUndone(entries).Where(e => steps.Contains(e.Step)))
        {
            if (entry.Kind == EntryKind.Hot && round.RemoveAll(e => e.Kind != EntryKind.Hot) > 0)
            {
                told.Add("Something got hot; what was seen and read before it does not count.");
            }

            if (entry.Kind != EntryKind.Changed)
            {
                round.Add(entry);
                continue;
            }

            changes++;
            var mend = table.Singles.FirstOrDefault(h => !h.Faults.IsEmpty && h.Repair == entry.Raw) is { } mended
                ? Trouble.Begin(table, Heard.Of(stage, table, round)).Mended(new Suspect(mended.Repair, 1, [mended])).Table
                : null;
            heated = mend is null && (heated || round.Exists(e => e.Kind == EntryKind.Hot));
            thing = heated ? round.LastOrDefault(e => e is { Kind: EntryKind.Hot, Raw.Length: > 0 })?.Raw ?? thing : null;
            table = mend ?? (heated ? fresh.Heated(thing) : fresh);
            told.Add(entry.Raw.Length > 0 ? $"Mended: {entry.Raw}." : "Something was changed; what was seen before it does not count.");
            round.Clear();
        }

        var last = new Told(stage, round);
        told.AddRange(last.Sentences());
        table = IsBeforePower(stage, step) ? table.WithPowerOff() : table;
        return new(session, stage, step, Trouble.Begin(last.Weigh(table), Heard.Of(stage, table, round)), told.ToImmutable(), changes);
    }
}

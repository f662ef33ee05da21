using Loomwright.Diagnosis;
using Loomwright.Quantities;
using Loomwright.Records;
using Entry = Loomwright.Records.Entry;

namespace Loomwright.Sessions;

/// <summary>A search for a cause whose answers are kept as a session's are: durable before anybody is told so.</summary>
/// <param name="guide">Where they are kept.</param>
/// <param name="begun">The search as a row of the record.</param>
public sealed class KeptSearch(Guide guide, BenchSession begun)
{
    // A link that comes back finds the bike as it was left; after a rest nobody knows (judgement).
    private static readonly TimeSpan StillAsLeft = TimeSpan.FromMinutes(10);

    /// <summary>Its id, by which it is found again.</summary>
    public string Id => begun.Id;

    /// <summary>The hash of the design it began with.</summary>
    public string Design => begun.Design;

    /// <summary>When it began.</summary>
    public DateTimeOffset Began => begun.Began;

    /// <summary>The bike as it stood then.</summary>
    public Bike Bike => guide.BikeOf(begun);

    /// <summary>How many answers stand.</summary>
    /// <exception cref="RecordsException">They cannot be read.</exception>
    public int Answers => Answered().Count;

    /// <summary>The search after each answer that stands, with the answer's id, the last one last; what the table knows nothing of is left out.</summary>
    /// <param name="start">As it was before the first.</param>
    /// <param name="now">The moment; some minutes after the last answer nobody knows how the bike stands any more.</param>
    /// <exception cref="RecordsException">They cannot be read.</exception>
    public IReadOnlyList<(string Id, Trouble After)> Played(Trouble start, DateTimeOffset now)
    {
        var all = new List<(string Id, Trouble After)>();
        var last = now;
        foreach (var entry in Answered())
        {
            if (AskedLine.After(all.Count == 0 ? start : all[^1].After, entry.Raw) is { } next)
            {
                all.Add((entry.Id, next));
                last = entry.At;
            }
        }

        if (all.Count > 0 && now - last > StillAsLeft)
        {
            all[^1] = all[^1] with { After = all[^1].After.AtRest() };
        }

        return all;
    }

    /// <summary>A new answer's id.</summary>
    public static string NewId(DateTimeOffset now) => Guid.CreateVersion7(now).ToString("N");

    /// <summary>Keeps an answer under its id; null when it is durable, else why it is not.</summary>
    public string? Keep(string id, TroubleTable table, Evidence answer, DateTimeOffset now)
    {
        var told = Told(id, AskedLine.Of(table, answer), TroubleText.Of(table, answer), null, now);
        var band = answer is Evidence.Measured read ? Why.Band(table, read) : null;
        return Keep(answer is not Evidence.Measured { Volts: var volts } ? told : told with
        {
            Value = volts,
            Unit = nameof(Unit.Volt),
            Least = band?.Least,
            Most = band?.Most,
            Verdict = band is null ? Verdict.None : volts < band.Value.Least || volts > band.Value.Most ? Verdict.Not : Verdict.AsExpected,
        });
    }

    /// <summary>Keeps a repair that was made.</summary>
    public string? KeepMended(string id, string repair, DateTimeOffset now) => Keep(Told(id, AskedLine.OfMended(repair), $"mended: {repair}", null, now));

    /// <summary>Keeps that it got hot with something done, by its place in the table, and which wire or part, where one was named.</summary>
    public string? KeepHot(string id, TroubleTable table, int stimulus, DateTimeOffset now, string? thing = null) =>
        Keep(Told(id, AskedLine.OfHot(table, stimulus, thing), $"{TroubleText.Do(table, new Asked(stimulus))}: {(thing is null ? "hot, smoke or smell" : $"{thing} got hot, smoked or smelt")}", null, now));

    /// <summary>Takes the answer of that id back, whatever others gave after it.</summary>
    public string? TakeBack(string id, DateTimeOffset now) => Keep(Told(NewId(now), "", "", id, now));

    private List<Entry> Answered() => [.. TestRecord.NotUndone(guide.Records.Entries(begun.Id)).Where(e => e.Kind == EntryKind.Asked)];

    private Entry Told(string id, string raw, string words, string? undoes, DateTimeOffset now) =>
        new(id, begun.Id, "", undoes is null ? EntryKind.Asked : EntryKind.Undo, "", words, raw, null, null, null, null, Verdict.None, undoes, now);

    private string? Keep(Entry told)
    {
        try
        {
            guide.Writable();
            guide.Records.Keep(begun, [told]);
            return null;
        }
        catch (RecordsException e)
        {
            return e.Message;
        }
    }
}

using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Simulation;

namespace Loomwright.Sessions;

/// <summary>What a person told in a search for a cause as one line of text that needs no table to be kept: by names, not by places.</summary>
/// <param name="Do">What was done: control and position each, or seconds waited.</param>
/// <param name="Signs">What was seen: sense, name and word each.</param>
/// <param name="Red">Of a reading, the terminal of the red probe.</param>
/// <param name="Black">And of the black one; null for battery minus.</param>
/// <param name="Volts">The reading.</param>
/// <param name="Check">Name of a check of a thing itself.</param>
/// <param name="Found">What it found; null for all as designed.</param>
/// <param name="Unsure">The person could not tell.</param>
/// <param name="Mended">A repair that was made.</param>
/// <param name="Hot">It got hot, smoked or smelt with that.</param>
/// <param name="Thing">The wire or part that did, where one was named.</param>
internal sealed record AskedLine(
    string[][]? Do = null, string[][]? Signs = null, string? Red = null, string? Black = null, double? Volts = null,
    string? Check = null, string? Found = null, bool Unsure = false, string? Mended = null, bool Hot = false, string? Thing = null)
{
    private static readonly JsonSerializerOptions Short = new(JsonSerializerDefaults.Web) { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault };

    /// <summary>The line of an answer.</summary>
    public static string Of(TroubleTable table, Evidence answer) => JsonSerializer.Serialize(
        answer switch
        {
            Evidence.Seen seen => Doing(table, answer) with { Signs = [.. seen.Signs.Select(s => table.Table.Observables[s.Observable] is var what ? new[] { what.Sense.ToString(), what.Name, Word(what, s.Sign) } : [])] },
            Evidence.Measured read => Doing(table, answer) with { Red = table.Table.Points[read.Red].ToString(), Black = read.Black is { } black ? table.Table.Points[black].ToString() : null, Volts = read.Volts },
            Evidence.Checked found => new AskedLine(Check: found.Check.Name, Found: found.Found),
            { Place: { Check: { } check } } => new AskedLine(Check: check.Name, Unsure: true),
            { Place: var place } => Doing(table, answer) with { Unsure = true, Red = place.Red is { } red ? table.Table.Points[red].ToString() : null, Black = place.Black is { } black ? table.Table.Points[black].ToString() : null },
        },
        Short);

    /// <summary>The line of a repair.</summary>
    public static string OfMended(string repair) => JsonSerializer.Serialize(new AskedLine(Mended: repair), Short);

    /// <summary>The line of something hot, by what was done.</summary>
    public static string OfHot(TroubleTable table, int stimulus, string? thing) => JsonSerializer.Serialize(new AskedLine(Doing(table, stimulus), Hot: true, Thing: thing), Short);

    /// <summary>A line in words, for an answer that was kept without.</summary>
    public static string Words(string line)
    {
        try
        {
            return JsonSerializer.Deserialize<AskedLine>(line, Short)?.Words() ?? line;
        }
        catch (JsonException)
        {
            return line;
        }
    }

    /// <summary>The search after what a line tells; null when the design it is read against knows nothing of it.</summary>
    public static Trouble? After(Trouble search, string line)
    {
        try
        {
            return JsonSerializer.Deserialize<AskedLine>(line, Short)?.After(search);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private string Words() => Mended is not null ? $"mended: {Mended}" : $"{Check ?? DoneWords()}: {Answer()}";

    private string DoneWords() => Do is { Length: > 0 } ? string.Join(", ", Do.Select(o => o is [var control, var position] ? $"{control} → {position}" : $"{string.Join("", o)} s later")) : "power connected";

    private string Answer() =>
        Hot ? "hot, smoke or smell"
        : Unsure ? "not sure"
        : Volts is { } volts ? FormattableString.Invariant($"{volts:0.0#} V from {Red} to {Black ?? "battery minus"}")
        : Check is not null ? Found ?? Diagnosis.Check.AsDesigned
        : string.Join(", ", (Signs ?? []).Where(s => s.Length == 3).Select(s => $"{s[1]} {s[2]}"));

    private Trouble? After(Trouble search)
    {
        var table = search.Table;
        if (Mended is not null)
        {
            return search.Suspects.FirstOrDefault(s => s.Repair == Mended) is { } suspect ? search.Mended(suspect) : null;
        }

        if (Check is not null)
        {
            return table.Singles.SelectMany(h => h.Traces).FirstOrDefault(t => t.Check.Name == Check).Check is { } check
                ? search.After(Unsure ? new Evidence.NotSure(new Asked(null, Check: check)) : new Evidence.Checked(check, Found)) : null;
        }

        if (Place(table) is not { } stimulus)
        {
            return null;
        }

        int? Point(string? name) => name is null ? null : table.Table.Points.Select((p, i) => (p, i)).Where(p => p.p.ToString() == name).Select(p => (int?)p.i).FirstOrDefault();
        var (red, black) = (Point(Red), Point(Black));
        return Hot ? Trouble.Begin((Thing is null ? table : table.Heated(Thing)).Hot(stimulus), search.Answers)
            : (Red is not null && red is null) || (Black is not null && black is null) ? null
            : Volts is { } volts && red is { } at ? search.After(new Evidence.Measured(stimulus, at, black, volts))
            : Unsure ? search.After(new Evidence.NotSure(new Asked(stimulus, red, black)))
            : Seen(table, stimulus) is { } seen ? search.After(seen)
            : null;
    }

    private Evidence.Seen? Seen(TroubleTable table, int stimulus)
    {
        var signs = (Signs ?? []).Select(s => s is [var sense, var name, var word] ? Sign(table, sense, name, word) : null).ToList();
        return signs.Count == 0 || signs.Contains(null) ? null : new(stimulus, [.. signs.Select(s => s!.Value)]);
    }

    private static (int, byte)? Sign(TroubleTable table, string sense, string name, string word) =>
        Enumerable.Range(0, table.Table.Observables.Length)
            .Where(o => table.Table.Observables[o].Sense.ToString() == sense && table.Table.Observables[o].Name == name)
            .SelectMany(o => Report.WordsOf(table.Table.Observables[o]).Where(w => w.Word == word).Select(w => ((int, byte)?)(o, w.Sign))).FirstOrDefault();

    private static string Word(Observable what, byte sign) => Report.WordsOf(what).FirstOrDefault(w => w.Sign == sign).Word ?? "";

    private static AskedLine Doing(TroubleTable table, Evidence answer) => new(Doing(table, answer.Place.Stimulus!.Value));

    private static string[][] Doing(TroubleTable table, int stimulus) => [.. table.Table.Stimuli[stimulus].Operations.Select(o => o switch
    {
        Operation.Set set => new[] { set.Control, set.Position },
        Operation.Wait wait => [wait.Time.TotalSeconds.ToString("R", System.Globalization.CultureInfo.InvariantCulture)],
        _ => [],
    })];

    private int? Place(TroubleTable table)
    {
        var done = (Do ?? []).Select(o => o switch
        {
            [var control, var position] => new Operation.Set(control, position),
            [var seconds] when double.TryParse(seconds, System.Globalization.CultureInfo.InvariantCulture, out var time) => new Operation.Wait(TimeSpan.FromSeconds(time)),
            _ => (Operation?)null,
        }).ToImmutableArray();
        return done.Contains(null) ? null : table.Place(Stimulus.Of([.. done.Select(o => o!)]));
    }
}

using System.Collections.Immutable;

namespace Loomwright.Contacts;

/// <summary>
/// A lamp whose leads nobody has marked. Filaments show by their ohms: across two of them in series the meter shows the sum,
/// so the lead left out of the largest reading is the one they share, and the lower of the others is the brighter. An LED
/// shows nothing to an ohmmeter; it is fed 12 V through 1 kΩ, at most 12 mA, both ways round.
/// </summary>
public sealed class LampLeads
{
    /// <summary>Most leads that can be worked out.</summary>
    public const int MostLeads = 4;

    // The share by which a sum of two readings may miss the third, and the ohms of two touches of the probes (judgement).
    private const double SumWithin = 0.2, TouchOhms = 0.3;

    // Nearer than the last digit of a hand meter and those touches, two readings do not tell which is the lower.
    private const double SameWithin = 0.1 + TouchOhms;

    private readonly ImmutableArray<string> _leads;
    private readonly ImmutableArray<LampReading> _readings;

    private LampLeads(ImmutableArray<string> leads, ImmutableArray<LampReading> readings) => (_leads, _readings) = (leads, readings);

    /// <summary>What the readings tell so far.</summary>
    /// <param name="leads">Names of 2 to 4 leads.</param>
    /// <param name="readings">In the order taken; a later one of the same pair replaces the earlier.</param>
    /// <exception cref="ArgumentException">Too few or too many leads, or a reading of a pair that is not there.</exception>
    public static LampLeads Of(ImmutableArray<string> leads, ImmutableArray<LampReading> readings) =>
        leads.Length is < 2 or > MostLeads ? throw new ArgumentException("The leads of a lamp with 2 to 4 can be worked out.", nameof(leads))
        : readings.Any(r => r.Plus == r.Minus || r.Plus < 0 || r.Minus < 0 || r.Plus >= leads.Length || r.Minus >= leads.Length)
            ? throw new ArgumentException("A reading is of two different leads that are there.", nameof(readings))
            : new(leads, readings);

    /// <summary>The next pair; null when all that can be told is told.</summary>
    public LampQuestion? Next
    {
        get
        {
            if (Pairs.Where(p => Measured(p.One, p.Other) is null).Select(p => new LampQuestion(p.One, p.Other, Feed: false)).FirstOrDefault() is { } measure)
            {
                return measure;
            }

            return HasFilament ? null : Pairs
                .SelectMany(p => new[] { (Plus: p.One, Minus: p.Other), (Plus: p.Other, Minus: p.One) })
                .Where(p => !_readings.Any(r => r.Fed && r.Plus == p.Plus && r.Minus == p.Minus))
                .Select(p => new LampQuestion(p.Plus, p.Minus, Feed: true))
                .FirstOrDefault();
        }
    }

    /// <summary>Whether the ohmmeter showed a filament between any two leads.</summary>
    public bool HasFilament => _readings.Any(r => r.Ohms is not null);

    /// <summary>The lead all elements share, or null while it is not told.</summary>
    public string? Shared => Next is not null ? null : HasFilament ? SharedByFilaments : SharedByLeds;

    /// <summary>What the readings tell, in sentences.</summary>
    public ImmutableArray<string> Words => Next is not null ? [] : HasFilament ? [.. FilamentWords()] : [.. LedWords()];

    private IEnumerable<(int One, int Other)> Pairs =>
        Enumerable.Range(0, _leads.Length).SelectMany(one => Enumerable.Range(one + 1, _leads.Length - one - 1).Select(other => (one, other)));

    private LampReading? Measured(int one, int other) => _readings.LastOrDefault(r => !r.Fed && r.IsOf(one, other));

    private double? OhmsOf(int one, int other) => Measured(one, other)?.Ohms;

    private string? SharedByFilaments
    {
        get
        {
            var shares = Enumerable.Range(0, _leads.Length).Where(IsShared).ToList();
            return shares is [var one] ? _leads[one] : null;
        }
    }

    // Two filaments or more end here, and between their other ends the meter shows the sum.
    private bool IsShared(int lead)
    {
        var others = Enumerable.Range(0, _leads.Length).Where(o => o != lead && OhmsOf(lead, o) is not null).ToList();
        return others.Count > 1 && others.TrueForAll(a => others.TrueForAll(b => a == b
            || (OhmsOf(a, b) is { } across && Math.Abs(across - OhmsOf(lead, a)!.Value - OhmsOf(lead, b)!.Value) <= (SumWithin * across) + TouchOhms && across > OhmsOf(lead, a) && across > OhmsOf(lead, b))));
    }

    private IEnumerable<string> FilamentWords()
    {
        if (SharedByFilaments is { } shared)
        {
            var at = _leads.IndexOf(shared);
            yield return $"{shared} is the lead the filaments share: ground, or the common plus.";
            var ends = Enumerable.Range(0, _leads.Length).Where(o => o != at && OhmsOf(at, o) is not null).OrderBy(o => OhmsOf(at, o)).ToList();
            foreach (var (end, rank) in ends.Select((e, i) => (e, i)))
            {
                var near = ends.Exists(o => o != end && Math.Abs(OhmsOf(at, o)!.Value - OhmsOf(at, end)!.Value) < SameWithin);
                yield return FormattableString.Invariant($"{_leads[end]} to {shared}: {OhmsOf(at, end):0.##} Ω cold, {(near ? "too near the next to tell them apart by ohms" : rank == 0 ? "the filament of the most watts, stop or main" : "fewer watts, tail or dip or position")}.");
            }

            if (ends.Zip(ends.Skip(1)).Any(p => OhmsOf(at, p.Second) - OhmsOf(at, p.First) < SameWithin))
            {
                yield return $"Which is which: plus for a second on each of them, {shared} on minus, from a supply that shows amps and has a fuse. More amps is more watts, and the glass gets hot. Or read the marks on the lamp's socket; in a bulb with main and dip the dip filament sits in a shield.";
            }
        }
        else if (Pairs.Where(p => OhmsOf(p.One, p.Other) is not null).ToList() is [var only])
        {
            yield return FormattableString.Invariant($"One filament, {_leads[only.One]} to {_leads[only.Other]}: {OhmsOf(only.One, only.Other):0.##} Ω cold; either way round.");
        }
        else
        {
            yield return "These ohms fit no lamp with one shared lead: touch the probes together, take that reading off, and measure again.";
        }

        foreach (var loose in _leads.Where((_, l) => Pairs.All(p => (p.One != l && p.Other != l) || OhmsOf(p.One, p.Other) is null)))
        {
            yield return $"{loose} reaches no filament: a broken one, an LED, or a lead left over.";
        }
    }

    private ImmutableArray<LampReading> Lit => [.. _readings.Where(r => r is { Fed: true, Lights: true })];

    private string? SharedByLeds =>
        Lit is [_, _, ..] lit && lit.Select(r => r.Minus).Distinct().ToList() is [var minus] ? _leads[minus]
        : Lit is [_, _, ..] again && again.Select(r => r.Plus).Distinct().ToList() is [var plus] ? _leads[plus] : null;

    private IEnumerable<string> LedWords()
    {
        if (Lit.IsEmpty)
        {
            yield return "Nothing lit and nothing measured: the lamp is broken, or needs more than 12 mA to show. Try the next one before you judge.";
        }

        foreach (var reading in Lit)
        {
            var either = Lit.Any(r => (r.Plus, r.Minus) == (reading.Minus, reading.Plus));
            yield return either
                ? $"It lights with plus on {_leads[reading.Plus]} and minus on {_leads[reading.Minus]}; the other way round too."
                : $"It lights with plus on {_leads[reading.Plus]} and minus on {_leads[reading.Minus]}, and only so.";
        }

        if (SharedByLeds is { } shared)
        {
            yield return $"{shared} is the lead the elements share.";
        }
    }
}

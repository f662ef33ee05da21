using System.Collections.Immutable;
using Loomwright.Simulation;

namespace Loomwright.Diagnosis;

/// <summary>
/// Finding a cause by asking: what was answered so far, what may be wrong, what to ask next. A value; each answer gives the
/// next one. It knows the table and the answers and nothing else.
/// </summary>
public sealed class Trouble
{
    private const double Enough = 0.95;
    private const int Best = 8;
    private const int Supports = 2;

    // After a change nobody can name, so many looks at things themselves come before power (judgement).
    private const int LookedAt = 3;

    // A state that something at least this likely says could harm is not proposed, nor one in which a fuse is as likely as this to blow.
    private const double LikelyEnoughToHarm = 0.01, LikelyEnoughToBlow = 0.1;

    // Three standard deviations of a normal law, as a log-likelihood ratio: 3²/2.
    private const double Misfit = 4.5;

    // What is left after all was asked again is lived with up to here; beyond it asking on is of no use.
    private const double Hopeless = 12;

    private readonly TroubleTable _table;
    private readonly Belief _belief;
    private readonly ImmutableHashSet<Asked> _again;
    private readonly int? _at;
    private readonly Dictionary<int, bool> _blows = [], _burns = [];

    private Trouble(TroubleTable table, ImmutableArray<Evidence> answers, int? at, ImmutableArray<Hypothesis> all, ImmutableHashSet<Asked> again)
    {
        (_table, Answers, _at, _again) = (table, answers, at, again);
        _belief = new Belief(table.Table, all, answers);
        Suspects =
        [
            .. _belief.All.Zip(_belief.Weights).GroupBy(h => h.First.Repair, StringComparer.Ordinal)
                .Select(g => new Suspect(g.Key, g.Sum(h => h.Second), [.. g.OrderByDescending(h => h.Second).Select(h => h.First)]))
                .OrderBy(s => table.GotHot && s.Repair == Hypothesis.Nothing).ThenByDescending(s => s.Share).ThenBy(s => s.Repair, StringComparer.Ordinal).Where((s, i) => i < 3 || s.Share > 0.01),
        ];
        var odd = OddOf();
        var hopeless = odd.AskedAgain && _belief.Against.Sum() > Hopeless;
        Odd = odd.AskedAgain && !hopeless ? null : odd.Odd;
        NotRepeated = odd.NotRepeated;
        Surprising = odd.Surprising;
        var likely = Odd is null && Suspects[0].Share >= Enough;
        Questions = hopeless || (likely && Supported(Suspects[0])) ? [] : [.. InOrder().Take(Best)];
        State = hopeless ? Search.DoesNotFit
            : likely && Questions.IsEmpty ? Search.Found
            : Odd is not null || !Questions.IsEmpty ? Search.GoesOn
            : odd.AskedAgain ? Search.DoesNotFit
            : Search.CannotTellApart;
    }

    /// <summary>Before anything was asked, with what is known already.</summary>
    public static Trouble Begin(TroubleTable table, params ImmutableArray<Evidence> known) => known.IsEmpty
        ? new(table, [], null, table.Singles, [])
        : new Trouble(table, known[..^1], null, table.Singles, []).After(known[^1]);

    /// <summary>What it searches in.</summary>
    public TroubleTable Table => _table;

    /// <summary>The answers so far; of a question asked again the last one.</summary>
    public ImmutableArray<Evidence> Answers { get; }

    /// <summary>Where the search stands.</summary>
    public Search State { get; }

    /// <summary>What may be wrong, the likeliest first: three, and all above one in a hundred.</summary>
    public ImmutableArray<Suspect> Suspects { get; }

    /// <summary>Where nothing tells them apart any more: the fewest that are together as likely as one would have to be. Else empty.</summary>
    public ImmutableArray<Suspect> Group => State != Search.CannotTellApart ? []
        : [.. Suspects.Where((_, i) => i == 0 || Suspects.Take(i).Sum(s => s.Share) < Enough * (1 - SomethingElse))];

    /// <summary>How likely it is something that is not in the list, 0…1.</summary>
    public double SomethingElse => _belief.Other;

    /// <summary>The answer that goes worst with everything else, to be asked again; null while all goes together.</summary>
    public Evidence? Odd { get; }

    /// <summary>The answer that goes worst with everything else where what was done for it is not to be done again: something likely says it could harm. Null elsewhere.</summary>
    public Evidence? NotRepeated { get; }

    /// <summary>The answer that goes worst with all the others while they do not go together, whether or not it was asked again; null while they do.</summary>
    public Evidence? Surprising { get; }

    /// <summary>How the bike stands since the last answer, by its place in the table; null when that was no state, or nobody knows.</summary>
    public int? At => _at;

    /// <summary>Whether an answer tells of a blown fuse.</summary>
    public bool TellsBlownFuse => !Blown.IsEmpty;

    /// <summary>The fuses that were told to be blown, by name. They stay out: nothing is asked that hangs on one of them.</summary>
    public ImmutableArray<string> Blown => [.. Answers.OfType<Evidence.Seen>().SelectMany(BlownIn).Distinct(StringComparer.Ordinal)];

    /// <summary>What is worth asking, the best for a minute's work first. None of it brings a state that something likely says could harm.</summary>
    public ImmutableArray<Question> Questions { get; }

    /// <summary>All that tells anything at all, the best for a minute's work first.</summary>
    internal IEnumerable<Question> Every() => Every(MayBring);

    private IEnumerable<Question> Every(Func<int, bool> may)
    {
        var blown = Blown;
        var burning = new Lazy<bool>(() => _at is { } at && IsBurning(at));
        return _table.Asking(_belief.All).Ranked(_belief.Weights, _belief.BatteryPlace, _at, Done(), may)
            .Where(q => q.Stimulus is null || !blown.Any(f => _table.HangsOn(q, f)))
            .Where(q => q is not Question.Volts volts || volts.At != _at || !burning.Value); // Setting the probes takes its time.
    }

    // Where it got hot, the thing itself is looked at before anything has power; after a repair, the state that was wrong comes first.
    private IEnumerable<Question> InOrder()
    {
        if (_table.GotHot && (_table.HotAt is not null || Answers.Count(a => a.Place.Check is not null) < LookedAt))
        {
            var done = Done();
            var dead = AtHotThing().Where(q => !done.Contains(q.Place)).Concat(Every(_ => false).Where(q => !_table.TriesBox(q)));
            return dead.Concat(Every().Where(q => q.Stimulus is not null)).DistinctBy(q => q.Place);
        }

        return _table.WrongBefore is { } wrong && Answers.IsEmpty && MayBring(wrong) ? Every().Prepend(new Asked(wrong).Again()).DistinctBy(q => q.Place)
            : BatteryAtRest() is { } battery ? Every().Prepend(battery.Again()).DistinctBy(q => q.Place) : Every();
    }

    // Where a weak battery is among the likeliest its volts at rest come first, as all else is judged by them (common practice, no source).
    private Asked? BatteryAtRest() => Suspects.Take(3).SelectMany(s => s.Hypotheses).FirstOrDefault(h => h.IsOfTheBattery) is { } weak
        && _table.AtRest(weak) is { } asked && !Done().Contains(asked) && MayBring(asked.Stimulus!.Value) ? asked : null;

    private IEnumerable<Question> AtHotThing() => _table.Singles.SelectMany(h => h.Traces).Select(t => t.Check).Distinct()
        .Where(c => c.Subject == _table.HotThing && c.Kind != CheckKind.Part).OrderBy(c => c.Kind).Select(c => new Asked(null, Check: c).Again());

    /// <summary>What a question may be answered with, and what that would speak for; the likeliest answer first.</summary>
    public ImmutableArray<Outlook> Outlooks(Question question) => Outlook.Of(_table, _belief, question);

    /// <summary>After one more answer. When nothing listed goes with the answers, two faults at once are thought of, then bad joints and leaks of other sizes.</summary>
    public Trouble After(Evidence answer)
    {
        var before = Answers.FirstOrDefault(a => a.Place == answer.Place);
        var (kept, again) = (answer, before is not null && Whole(before) ? _again.Add(answer.Place) : _again);
        if (answer is Evidence.NotSure)
        {
            (kept, again) = (before ?? answer, _again.Add(answer.Place));
        }
        else if ((before, answer) is (Evidence.Seen old, Evidence.Seen now))
        {
            kept = now with { Signs = [.. old.Signs.Where(s => !now.Signs.Any(n => n.Observable == s.Observable)), .. now.Signs] };
        }

        var answers = before is null ? Answers.Add(kept) : Answers.Replace(before, kept);
        var next = new Trouble(_table, answers, answer.Place.Stimulus, _table.Singles, again);
        if (next.Fits)
        {
            return next;
        }

        var two = _table.Pairs(answers, next._belief.BatteryPlace) is { IsEmpty: false } pairs
            ? new Trouble(_table, answers, answer.Place.Stimulus, [.. _table.Singles, .. pairs], again) : next;
        return two.Fits || _table.OtherSizes(answers, next._belief.BatteryPlace) is not { IsEmpty: false } sizes
            ? two : new Trouble(_table, answers, answer.Place.Stimulus, [.. two._belief.All, .. sizes], again);
    }

    /// <summary>The same with the bike at rest again, as when the search is taken up later.</summary>
    public Trouble AtRest() => new(_table, Answers, null, _belief.All, _again);

    /// <summary>After a repair was made: what was answered before is kept, with that fault there; what is asked from now on is without it.</summary>
    public Trouble Mended(Suspect mended)
    {
        var table = _table.After(mended.Hypotheses[0], Answers);
        return new(table, [], null, table.Singles, []);
    }

    private bool Fits => Surprising is null;

    private HashSet<Asked> Done() => [.. Answers.Where(Whole).Select(a => a.Place), .. _again];

    // One sign told leaves “what else lights?” to be asked.
    private bool Whole(Evidence answer) => answer is Evidence.Measured or Evidence.Checked || (answer is Evidence.Seen seen
        && Enumerable.Range(0, _table.Table.Observables.Length).All(o => _table.Table.Observables[o].Sense != Dictionary.Sense.Sight || seen.Signs.Any(s => s.Observable == o)));

    // Where the bike stands already its fuses have held, and what else is seen there is told at once.
    private bool MayBring(int stimulus) => !_table.IsPowerOff && !_table.BringsHeat(stimulus) && (stimulus == _at || (!CouldBlow(stimulus) && !CouldBurn(stimulus)));

    // A fuse that was seen blown says so whatever is thought of, of all that goes on from there too.
    private bool CouldBlow(int stimulus) => Known(_blows, stimulus, () => Answers.Any(a => a.Place.Stimulus is { } blown && _table.Brings(blown, stimulus) && TellsBlown(a))
        || Listed().Where(h => _table.Blows(h.Hypothesis, stimulus)).ToList() is var blowing && (blowing.Exists(h => h.Share > LikelyEnoughToHarm) || blowing.Sum(h => h.Share) > LikelyEnoughToBlow));

    private bool CouldBurn(int stimulus) => Known(_burns, stimulus, () =>
        Listed().Any(h => h.Share > LikelyEnoughToHarm && !_table.Blows(h.Hypothesis, stimulus) && _table.Harms(h.Hypothesis, stimulus)));

    // Where the bike stands so already and neither heat nor smoke is told of, only what is likelier than not counts. Simulated no further than until that is clear.
    private bool IsBurning(int stimulus)
    {
        var likely = Listed().Where(h => h.Share > LikelyEnoughToHarm && !_table.Blows(h.Hypothesis, stimulus)).OrderByDescending(h => h.Share).ToList();
        var (burning, left) = (0.0, likely.Sum(h => h.Share));
        foreach (var (hypothesis, share) in likely.TakeWhile(_ => burning <= 0.5 && burning + left > 0.5))
        {
            (burning, left) = (burning + (_table.Harms(hypothesis, stimulus) ? share : 0), left - share);
        }

        return burning > 0.5;
    }

    // As shares of what is in the list: of something else nobody knows whether it harms.
    private IEnumerable<(Hypothesis Hypothesis, double Share)> Listed() => _belief.All.Zip(_belief.Weights, (h, w) => (h, w / (1 - _belief.Other)));

    private static bool Known(Dictionary<int, bool> known, int stimulus, Func<bool> find)
    {
        if (!known.TryGetValue(stimulus, out var found))
        {
            known.Add(stimulus, found = find());
        }

        return found;
    }

    /// <summary>Whether what was done for an answer may be done again: nothing likely says it could harm.</summary>
    public bool MayRepeat(Evidence answer) => answer.Place.Stimulus is not { } stimulus || (MayBring(stimulus) && !TellsBlown(answer));

    private bool TellsBlown(Evidence answer) => answer is Evidence.Seen seen && BlownIn(seen).Any();

    private IEnumerable<string> BlownIn(Evidence.Seen seen) =>
        from sign in seen.Signs
        let what = _table.Table.Observables[sign.Observable]
        where what.Sense == Dictionary.Sense.Fuse && (FuseState)sign.Sign == FuseState.Blown
        select what.Name;

    // Under what goes best with all answers, the one that goes worst of those not yet asked again and that may be, then what was found
    // at a thing; when none is left, the worst of them, with the worst that only may not be repeated. None when all together are within
    // three standard deviations of what is usual.
    private (Evidence? Odd, Evidence? NotRepeated, bool AskedAgain, Evidence? Surprising) OddOf()
    {
        const double badly = 1;
        const double usual = 0.5;
        const double alone = 5;
        var ranked = Answers.Zip(_belief.Against, (a, g) => (Answer: a, Against: g)).Where(a => a.Against > badly).OrderByDescending(a => a.Against).ToList();
        if (ranked.Count == 0 || (_belief.Against.Sum() - (usual * Answers.Length) <= Misfit && ranked[0].Against <= alone))
        {
            return (null, null, false, null);
        }

        var left = ranked.Select(r => r.Answer).Where(a => !_again.Contains(a.Place)).ToList();
        return left.Find(MayRepeat) is { } fresh ? (fresh, null, false, ranked[0].Answer)
            : Answers.FirstOrDefault(a => a is Evidence.Checked { Found: not null } && !_again.Contains(a.Place)) is { } find ? (find, null, false, ranked[0].Answer)
            : (ranked[0].Answer, left.FirstOrDefault(), true, ranked[0].Answer);
    }

    // Two answers that are likelier with this than with the rest, one of them no mere look: eyes take much for the same.
    private bool Supported(Suspect suspect)
    {
        var rest = _belief.All.Where(h => h.Repair != suspect.Repair).ToList();
        var prior = rest.Sum(h => h.Prior);
        var speaking = Answers.Where(answer => new Weighing(_table.Table, [answer]) is var weighing
            && Math.Exp(weighing.Of(suspect.Hypotheses[0], _belief.BatteryPlace)) > 2 * rest.Sum(h => h.Prior * Math.Exp(weighing.Of(h, _belief.BatteryPlace))) / prior).ToList();
        return speaking.Count >= Supports && speaking.Exists(a => a is not Evidence.Seen);
    }
}

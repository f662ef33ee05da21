using System.Collections.Concurrent;
using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Dictionary;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Sizing;

namespace Loomwright.Diagnosis;

/// <summary>What a search works with: what every fault looks like, where probes may go, and how two faults look together.</summary>
public sealed class TroubleTable
{
    // Two at once are simulated only where, put together from what each does alone, they go with the answers.
    private const int MostAlone = 50, MostPairs = 12;
    private const double NothingWrong = 0.02;

    // Steps of about three below, between and above those listed; all together so likely beside those (judgement).
    private const int MostSized = 8;
    private const double BesideThoseListed = 0.25;
    private static readonly ImmutableArray<double> OtherJointOhms = [0.05, 0.2, 1, 2], OtherLeakOhms = [10, 100, 300];

    // A smell may come from elsewhere (judgement).
    private const double NotHot = 0.03;

    private readonly Loom _loom;
    private readonly ConcurrentDictionary<(Hypothesis One, Hypothesis Other), Hypothesis> _pairs = new(new SameTwo());
    private readonly ConcurrentDictionary<string, ImmutableArray<Look>> _sizes = new(StringComparer.Ordinal);
    private readonly Lazy<Asking> _asking;
    private readonly Lazy<Burning> _burning;
    private readonly Lazy<InHand> _inHand;

    private TroubleTable(Loom loom, FaultTable table, ImmutableArray<Hypothesis> singles, int? hotAt = null)
    {
        _inHand = new(() => new InHand(loom));
        HotAt = hotAt;
        (_loom, Table, Singles) = (loom, table, singles);
        Probes = [.. table.Points.Select((_, p) => (p, (int?)null)), .. loom.Wires.Select(w => (table.Points.IndexOf(w.From), (int?)table.Points.IndexOf(w.To)))];
        _burning = new(() => new Burning(loom, table));
        _asking = new(() => new Asking(Table, Singles, Probes));
    }

    /// <summary>Makes it for a whole bike. Takes as long as its dictionary.</summary>
    /// <param name="loom">The bike as designed.</param>
    /// <param name="also">What was done besides what is usual; what is usual anyway is there once.</param>
    /// <param name="priors">What is known of how it was made.</param>
    /// <param name="stop">Ends the work early; then <see cref="OperationCanceledException"/> is thrown.</param>
    public static TroubleTable Of(Loom loom, IEnumerable<Stimulus>? also = null, PriorOptions? priors = null, CancellationToken stop = default)
    {
        // What is done on the way to something is there too: what could burn is looked for in it.
        var usual = Stimuli.Usual(loom);
        var onTheWay = usual.SelectMany(u => Enumerable.Range(0, u.Operations.Length).Select(n => Stimulus.Of(u.Operations[..n])));
        var options = new DictionaryOptions
        {
            Stimuli = [.. usual.Concat(also ?? []).Concat(onTheWay).DistinctBy(s => string.Join('|', s.Operations))],
            Points = PointsOf(loom),
            Priors = priors ?? new(),
            Stop = stop,
        };
        var table = FaultTable.Of(loom, options);
        var made = new TroubleTable(loom, table, Hypothesis.Singles(loom, table, NothingWrong));

        // The first question is not to wait for them.
        _ = (made._asking.Value, made._burning.Value);
        return made;
    }

    /// <summary>Where probes may go: every wire's ends.</summary>
    internal static ImmutableArray<TerminalRef> PointsOf(Loom loom) => [.. loom.Wires.SelectMany(w => new[] { w.From, w.To }).Distinct()];

    /// <summary>Where the two probes may go, by places among the table's points: every point against battery minus, and along every wire.</summary>
    internal ImmutableArray<(int Red, int? Black)> Probes { get; }

    /// <summary>The place of something done; null when the table was not made with it.</summary>
    public int? Place(Stimulus done) => Enumerable.Range(0, Table.Stimuli.Length).Where(s => Table.Stimuli[s].Operations.SequenceEqual(done.Operations)).Select(s => (int?)s).FirstOrDefault();

    /// <summary>What every single fault looks like.</summary>
    public FaultTable Table { get; }

    /// <summary>Nothing wrong, then every single fault.</summary>
    public ImmutableArray<Hypothesis> Singles { get; }

    /// <summary>What was done last when something got hot, smoked or smelt, by its place; null when nothing did since a repair.</summary>
    public int? HotAt { get; }

    /// <summary>The wire or part that got hot, where one was named; null else.</summary>
    public string? HotThing { get; private init; }

    /// <summary>Whether something got hot and nothing was mended by name since: what is looked at without power comes first.</summary>
    public bool GotHot { get; private init; }

    /// <summary>Whether power stays off: then nothing is asked but what is looked at without it.</summary>
    public bool IsPowerOff { get; private init; }

    /// <summary>The state that was wrong before the last repair, by its place; null before a repair.</summary>
    public int? WrongBefore { get; private init; }

    /// <summary>What comes off before a check: where no fuse protects the hands, and where something got hot, the battery.</summary>
    public string FirstOff(Check check) => check.Kind == CheckKind.Part && _inHand.Value.IsBox(check.Subject) ? "key off"
        : GotHot || _inHand.Value.IsUnfused(check) ? _inHand.Value.MinusOff : "key off, main fuse out";

    /// <summary>What is done before work on a wire that no fuse protects, in words: <c>key off, minus off battery first</c>.</summary>
    public string MinusOff => _inHand.Value.MinusOff;

    /// <summary>What brings power back after a check, in order.</summary>
    public ImmutableArray<string> PowerOn => ["Main fuse back in, if it came out whole.", $"{char.ToUpperInvariant(_inHand.Value.MinusOn[0])}{_inHand.Value.MinusOn[1..]}."];

    /// <summary>What to do for a check, as a sentence.</summary>
    public string Ask(Check check) => _inHand.Value.Ask(check);

    /// <summary>Where the design has what sits on a part: each terminal by its mark, with its wires and their colours.</summary>
    public ImmutableArray<(string Mark, string Wires)> Designed(string part) => _inHand.Value.Designed(part);

    /// <summary>Whether a check tries a load controller by itself, which nobody is to be sent to do where something got hot.</summary>
    internal bool TriesBox(Question question) => question is Question.Of { Check: { Kind: CheckKind.Part } check } && _inHand.Value.IsBox(check.Subject);

    /// <summary>Whether that comes again on the way to a stimulus (by its place).</summary>
    public bool BringsHeat(int stimulus) => HotAt is { } hot && Brings(hot, stimulus);

    /// <summary>Whether what was done at one place comes again on the way to another.</summary>
    internal bool Brings(int before, int stimulus) => Table.Stimuli[stimulus].Operations.AsSpan().StartsWith(Table.Stimuli[before].Operations.AsSpan());

    /// <summary>Where the volts of the battery that something is about are measured with nothing on; null where the table has no such place.</summary>
    internal Asked? AtRest(Hypothesis ofTheBattery)
    {
        var rest = Enumerable.Range(0, Table.Stimuli.Length).Where(s => Table.Stimuli[s].Operations.IsEmpty).ToList();
        var battery = ofTheBattery.Faults.Select(f => f.Fault).OfType<Fault.Setting>().Select(f => _loom.Part(f.Part)).FirstOrDefault(p => p is not null);
        var plus = battery is null || Kinds.Find(battery.Kind)?.Build(battery).Supply is not { } supply ? -1 : Table.Points.IndexOf(new TerminalRef(battery.Name, supply.Plus));
        return rest.Count == 0 || plus < 0 ? null : new Asked(rest[0], plus);
    }

    /// <summary>Whether an observable (by its place) shows a sign under anything in the list, somewhere.</summary>
    public bool CanShow(int observable, byte sign) => Singles.Any(h => h.Looks.Any(l => !l.Signs.IsEmpty && l.Signs[observable] == sign));

    /// <summary>What a check may find, as it should be left out.</summary>
    public ImmutableArray<string> Findable(Check check) => [.. Singles.SelectMany(h => h.Traces).Where(t => t.Check == check).Select(t => t.Found).Distinct(StringComparer.Ordinal)];

    /// <summary>What a check may find, by the place on the part it is about, in the order of its terminals; what is about the whole part has no place and stands last.</summary>
    public ImmutableArray<(string? Place, ImmutableArray<string> Found)> FindableAt(Check check)
    {
        ImmutableArray<Terminal> marks = _loom.Part(check.Subject) is { } part ? Kinds.Find(part.Kind)?.Build(part).Terminals ?? [] : [];
        int Order(string? mark) => marks.Select(t => t.Mark).ToList().IndexOf(mark ?? "") is >= 0 and var place ? place : marks.Length;
        var traces = new Traces(_loom);
        return
        [
            .. Singles.SelectMany(h => h.Faults).SelectMany(f => traces.Of(f).Where(t => t.Check == check).Select(t => (t.Found, Place: Traces.Place(_loom, f.Fault, check.Subject))))
                .DistinctBy(t => t.Found).GroupBy(t => t.Place).OrderBy(g => Order(g.Key)).Select(g => (g.Key, g.Select(t => t.Found).ToImmutableArray())),
        ];
    }

    /// <summary>Whether a question has another answer with a fuse out than with it in, on a bike with nothing else wrong.</summary>
    internal bool HangsOn(Question question, string fuse)
    {
        const double apartVolts = 0.5;
        return question.Stimulus is { } stimulus && Singles.FirstOrDefault(h => h.Faults.Any(f => f.Fault is Fault.Dead { Inside: null } dead && Text.Names.Same(dead.Part, fuse))) is { } without
            && (without.Looks[stimulus], Singles[0].Looks[stimulus]) is var (apart, healthy)
            && (question is Question.Volts v ? Math.Abs(Likelihood.Volts(apart, v.Red, v.Black) - Likelihood.Volts(healthy, v.Red, v.Black)) > apartVolts
                : Enumerable.Range(0, Math.Min(apart.Signs.Length, healthy.Signs.Length)).Any(o => apart.Signs[o] != healthy.Signs[o] && Table.Observables[o].Sense != Sense.Fuse));
    }

    internal Asking Asking(ImmutableArray<Hypothesis> all) => all == Singles ? _asking.Value : _asking.Value.With(all);

    /// <summary>Two faults at once that go with the answers, each as simulation shows it; the likeliest first.</summary>
    internal ImmutableArray<Hypothesis> Pairs(ImmutableArray<Evidence> answers, int battery)
    {
        var together = new Weighing(Table, answers);
        var each = answers.Select(a => new Weighing(Table, [a])).ToList();
        var alone = Singles.Skip(1)
            .OrderByDescending(h => Math.Log(h.Prior) + each.Max(w => w.Of(h, battery) - w.Of(Singles[0], battery)))
            .Take(MostAlone).ToList();
        var pairs = from i in Enumerable.Range(0, alone.Count)
                    from j in Enumerable.Range(i + 1, alone.Count - i - 1)
                    where alone[i].Repair != alone[j].Repair
                    orderby Math.Log(alone[i].Prior * alone[j].Prior) + together.Of(Together(alone[i], alone[j], answers), battery) descending
                    select (One: alone[i], Other: alone[j]);
        var best = pairs.Take(MostPairs).ToList();
        foreach (var fresh in best.Where(p => !_pairs.ContainsKey(p)).GroupBy(p => p.One, ReferenceEqualityComparer.Instance).ToList())
        {
            foreach (var (other, both) in Simulated(fresh.First().One, [.. fresh.Select(p => p.Other)]))
            {
                _pairs[(fresh.First().One, other)] = both;
            }
        }

        return [.. best.Select(p => _pairs[p])];
    }

    /// <summary>Bad joints and leaks of other sizes than the list has them in, as simulation shows each: thought of where nothing listed goes with the answers.</summary>
    internal ImmutableArray<Hypothesis> OtherSizes(ImmutableArray<Evidence> answers, int battery)
    {
        var each = answers.Select(a => new Weighing(Table, [a])).ToList();
        var best = Singles.Where(h => h.Faults is [{ Fault: Fault.High or Fault.Leak }, ..]).GroupBy(h => h.Repair, StringComparer.Ordinal)
            .Select(g => (Of: g.First(), Prior: g.Sum(h => h.Prior), Goes: g.Max(h => each.Sum(w => Math.Max(0, w.Of(h, battery) - w.Of(Singles[0], battery))))))
            .OrderByDescending(g => Math.Log(g.Prior) + g.Goes).Take(MostSized).ToList();
        var sizes = best.SelectMany(b => Sizes(b.Of.Faults[0].Fault).Select(f => (b.Of, b.Prior, Fault: new ListedFault(f, b.Of.Repair, b.Of.Faults[0].Causes)))).ToList();
        var fresh = sizes.Select(s => s.Fault).Where(f => !_sizes.ContainsKey(f.Fault.ToString())).ToImmutableArray();
        if (!fresh.IsEmpty)
        {
            var table = FaultTable.Of(_loom, new DictionaryOptions { Stimuli = Table.Stimuli, Points = Table.Points, FullLight = _loom, Faults = fresh });
            foreach (var id in fresh.Select(f => f.Fault.ToString()))
            {
                _sizes[id] = table.Find(id)!.Looks;
            }
        }

        return [.. sizes.Select(s => s.Of with { Faults = [s.Fault], Prior = BesideThoseListed * s.Prior / Sizes(s.Fault.Fault).Length, Looks = _sizes[s.Fault.Fault.ToString()] })];
    }

    private static ImmutableArray<Fault> Sizes(Fault fault) => fault switch
    {
        Fault.High high => [.. OtherJointOhms.Select(ohms => high with { Ohms = ohms })],
        Fault.Leak leak => [.. OtherLeakOhms.Select(ohms => leak with { Ohms = ohms })],
        _ => [],
    };

    /// <summary>
    /// Whether a fuse would blow or something burn or break where the bike with nothing wrong has none of it. Simulated when first
    /// asked; a fault that is not felt there has the healthy look itself, and what takes little current burns nothing.
    /// </summary>
    public bool Harms(Hypothesis hypothesis, int stimulus) => _burning.Value.Harms(hypothesis, stimulus);

    /// <summary>Whether a fuse would be blown after a stimulus, by its place, that the bike with nothing wrong leaves whole; also where nothing comes to rest.</summary>
    internal bool Blows(Hypothesis hypothesis, int stimulus) => _burning.Value.Blows(hypothesis, stimulus);

    private IEnumerable<(Hypothesis Other, Hypothesis Both)> Simulated(Hypothesis one, ImmutableArray<Hypothesis> others)
    {
        var options = new DictionaryOptions { Stimuli = Table.Stimuli, Points = Table.Points, FullLight = _loom, Faults = [.. others.Select(o => o.Faults[0])] };
        var both = FaultTable.Of(Patch.Apply(_loom, one.Faults[0].Fault), options);
        return others.Select(o => (o, new Hypothesis(
            [one.Faults[0], o.Faults[0]], [one.Repair, o.Repair], one.Prior * o.Prior, both.Find(o.Faults[0].Fault.ToString())!.Looks, [.. one.Traces, .. o.Traces])));
    }

    /// <summary>The table with every hypothesis weighed by what is known besides looks and volts.</summary>
    /// <param name="by">Above 0: how well it goes with that, 1 for as well as one would wish.</param>
    public TroubleTable Weighed(Func<Hypothesis, double> by) => Weighed(by, HotAt);

    /// <summary>The table once it is known that something got hot, and which wire or part, if that is known: it may be mended or not.</summary>
    public TroubleTable Heated(string? thing = null) => new(_loom, Table, Singles, HotAt) { HotThing = thing ?? HotThing, GotHot = true, WrongBefore = WrongBefore, IsPowerOff = IsPowerOff };

    /// <summary>The table where something before power was not as expected: until it is mended nothing that needs power is asked.</summary>
    public TroubleTable WithPowerOff() => new(_loom, Table, Singles, HotAt) { HotThing = HotThing, GotHot = GotHot, WrongBefore = WrongBefore, IsPowerOff = true };

    /// <summary>
    /// The table after something there got hot, smoked or smelt: what could do harm under that stimulus goes before the rest, and it is
    /// not brought again before a repair, whatever the simulation thinks of it.
    /// </summary>
    public TroubleTable Hot(int stimulus) => Weighed(h => _burning.Value.Heats(h, stimulus) ? 1 : NotHot, stimulus);

    private TroubleTable Weighed(Func<Hypothesis, double> by, int? hotAt) => new(_loom, Table, [.. Singles.Select(h => h with { Prior = h.Prior * by(h) })], hotAt) { HotThing = HotThing, GotHot = GotHot || hotAt is not null, WrongBefore = WrongBefore, IsPowerOff = IsPowerOff };

    /// <summary>The table after a repair: every fault weighed by how it goes with the old answers while the mended one was still there.</summary>
    internal TroubleTable After(Hypothesis mended, ImmutableArray<Evidence> answers)
    {
        var left = Singles.Where(h => !mended.Repairs.Contains(h.Repair) || h.Faults.IsEmpty).ToImmutableArray();
        var weights = new Belief(Table, [.. left.Select(h => Together(h, mended, answers))], answers).Weights;
        return new(_loom, Table, [.. left.Zip(weights, (h, w) => h with { Prior = w })]) { WrongBefore = (answers.FirstOrDefault(IsOdd) ?? answers.FirstOrDefault(a => a.Place.Stimulus is not null))?.Place.Stimulus };
    }

    private bool IsOdd(Evidence answer) => answer is Evidence.Seen seen && Singles[0].Looks[seen.Stimulus].Signs is { IsEmpty: false } healthy && seen.Signs.Any(s => healthy[s.Observable] != s.Sign);

    // Both at once, as far as the answers ask for it.
    private Hypothesis Together(Hypothesis one, Hypothesis other, ImmutableArray<Evidence> answers)
    {
        var looks = one.Looks.ToBuilder();
        foreach (var s in answers.Select(a => a.Place.Stimulus).OfType<int>().Distinct())
        {
            looks[s] = Together(Singles[0].Looks[s], one.Looks[s], other.Looks[s]);
        }

        return one with { Looks = looks.MoveToImmutable(), Traces = [.. one.Traces, .. other.Traces] };
    }

    // What one of two changes is taken from that one; what both change, from the second: a first guess, simulated where it matters.
    private static Look Together(Look healthy, Look one, Look other)
    {
        if (one.Signs.IsEmpty || other.Signs.IsEmpty || healthy.Signs.IsEmpty)
        {
            return one.Signs.IsEmpty ? one : other;
        }

        return other with
        {
            Signs = [.. other.Signs.Select((sign, o) => sign == healthy.Signs[o] ? one.Signs[o] : sign)],
            Light = [.. other.Light.Select((l, o) => healthy.Light[o] > 0 ? one.Light[o] * l / healthy.Light[o] : Math.Max(one.Light[o], l))],
            Volts = [.. other.Volts.Select((v, p) => Math.Abs(v - healthy.Volts[p]) >= Math.Abs(one.Volts[p] - healthy.Volts[p]) ? v : one.Volts[p])],
        };
    }

    // Hypotheses of one table are the same only when they are the same object: comparing them by what is in them takes long.
    private sealed class SameTwo : IEqualityComparer<(Hypothesis One, Hypothesis Other)>
    {
        public bool Equals((Hypothesis One, Hypothesis Other) x, (Hypothesis One, Hypothesis Other) y) => ReferenceEquals(x.One, y.One) && ReferenceEquals(x.Other, y.Other);

        public int GetHashCode((Hypothesis One, Hypothesis Other) both) => HashCode.Combine(System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(both.One), System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(both.Other));
    }
}

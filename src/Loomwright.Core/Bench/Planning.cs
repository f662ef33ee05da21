using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Makes a plan: what there is to show, in which order, then each stage on exactly what it connects.</summary>
internal sealed class Planning
{
    private const double AmpleAmps = 100;

    private readonly Loom _asDrawn;
    private readonly Loom _loom;
    private readonly PlanOptions _options;
    private readonly ImmutableArray<string>.Builder _open = ImmutableArray.CreateBuilder<string>();

    public Planning(Loom loom, PlanOptions options)
    {
        _options = options;
        _asDrawn = loom;
        _loom = StandIns.WithLamps(Supplied.With(loom, options));
    }

    public Plan Finish()
    {
        var found = Rules.Check(_asDrawn);
        _open.AddRange(found.Where(f => f.Severity == Severity.Look).Select(f => $"As drawn: {f.What}"));
        ImmutableArray<Finding> stops = [.. found.Where(f => f.Severity == Severity.Stop)];
        if (!stops.IsEmpty)
        {
            _open.Add("Nothing is powered before that is put right, so no stage is given. Put it right in the file too and make the plan again.");
        }

        return new Plan($"{_loom.Name}: bench plan", stops.IsEmpty ? Stages() : [], _open.ToImmutable()) { PutRightFirst = stops, Whole = _loom };
    }

    private ImmutableArray<Stage> Stages()
    {
        if (new Paths(_loom).Source is null)
        {
            _open.Add("No battery and no bench supply is in the file: there is nothing to power the bench from.");
            return [];
        }

        var survey = new Survey(_loom);
        var lines = Lines(survey);
        var key = KeyOf(survey, lines);
        var stages = ImmutableArray.CreateBuilder<Stage>();
        var (before, fuses) = (Reach.None, ImmutableDictionary<string, double>.Empty.WithComparers(Names.Comparer));
        var known = ImmutableHashSet<string>.Empty;
        var leads = fuses;
        ImmutableArray<string> onKey = [.. survey.After(key).Seen.Where(s => Line.IsOn(s) && Risky.IsForSeconds(_loom.Part(s.Part)!)).Select(s => s.Part).Distinct(Names.Comparer)];
        ImmutableArray<string> asideBefore = [];
        for (var n = 0; n < lines.Length; n++)
        {
            var reach = WithEveryLead(before.With(lines[n].Reach), lines);
            ImmutableArray<string> aside = [.. onKey.Where(p => before.Parts.Contains(p, Names.Comparer) && !lines[n].IsOf(p))];
            var site = Staging.Fused(new Site
            {
                Number = n,
                Line = lines[n],
                Previous = n == 0 ? null : lines[n - 1],
                Again = lines[..n].LastOrDefault(l => !aside.Any(l.IsOf)),
                Aside = aside,
                AsideBefore = asideBefore,
                Key = key,
                Whole = survey.Paths,
                Reach = reach,
                Before = before,
                Fuses = fuses,
                FusesBefore = fuses,
                LeadFuses = leads,
                LeadFusesBefore = leads,
                Connected = Unplugged.Of(Connected.Of(_loom, reach), survey.Paths, aside),
                NewsBefore = known,
                Once = new Once(),
                StandIns = StandIns.Of(_loom),
            });
            var (stage, open) = Staging.Write(site);
            stages.Add(stage);
            _open.AddRange(open);
            (before, fuses, leads, known, asideBefore) = (reach, site.Fuses, site.LeadFuses, known.Union(lines[n].News), aside);
        }

        _open.AddRange(OpenPoints.Of(survey, before, stages.ToImmutable()));
        return stages.ToImmutable();
    }

    private ImmutableArray<Line> Lines(Survey survey)
    {
        var dead = survey.NeverOn.IsEmpty || _options.BenchSupplyLimit is null ? survey.NeverOn : WithAmpleSupply().NeverOn;
        _open.AddRange(survey.NeverOn.Select(l => dead.Contains(l)
            ? $"{l}: nothing that was tried brings it on, so no stage shows it."
            : $"{l}: the bench supply is too small for it, {_options.BenchSupplyLimit}. Take one that gives more, or the battery."));
        var boxes = survey.Boxes.Where(IsOnTable).ToImmutableArray();
        var loads = Ordering.Together(survey.Loads).Where(IsOnTable).ToImmutableArray();
        var hasBox = survey.Paths.Models.Values.Any(m => m.Controller is not null);
        if (hasBox)
        {
            foreach (var load in loads.Where(l => l.Box is not null && !boxes.Any(b => b.Box == l.Box)))
            {
                _open.Add($"{load.Name}: its box is not on the table or never wakes.");
            }

            loads = loads.RemoveAll(l => l.Box is not null && !boxes.Any(b => b.Box == l.Box));
        }

        var order = Ordering.Of(boxes, loads);
        order = _options.OneOfEach ? OneOfEach(order) : order;
        return boxes.IsEmpty && order.Length > 0 ? order.Insert(0, FeedAlone.Of(survey, order[0])) : order;
    }

    private ImmutableArray<Line> OneOfEach(ImmutableArray<Line> order)
    {
        var known = new HashSet<string>(StringComparer.Ordinal);
        var kept = order.Where(l => l.Loads.IsEmpty || l.Cranks ? Know(l) : l.News.Any(n => !known.Contains(n)) && Know(l)).ToImmutableArray();
        _open.AddRange(order.Except(kept).Select(l => $"{l.Name} ({string.Join(", ", l.Loads.Select(Spoken.Of))}): left out, since all in it has been shown elsewhere; its own wires, joints and lamps are not tested."));
        return kept;

        bool Know(Line line)
        {
            known.UnionWith(line.News);
            return true;
        }
    }

    private Survey WithAmpleSupply() => new(StandIns.WithLamps(Supplied.With(_asDrawn, _options with { BenchSupplyLimit = new Current(AmpleAmps) })));

    // A switch in the hand has every lead on it that can be: one that no stage uses can still join feed and ground.
    private Reach WithEveryLead(Reach reach, ImmutableArray<Line> lines)
    {
        var standIns = StandIns.Of(_loom);
        var used = lines.SelectMany(l => l.Reach.Wires).ToHashSet(Names.Comparer);
        bool IsThere(TerminalRef at) => reach.Parts.Contains(at.Part, Names.Comparer);
        bool IsInHand(TerminalRef at) => IsThere(at) && StandIns.CanBeLead(_loom, at.Part) && !standIns.ContainsKey(at.Part);
        var spare = _loom.Wires.Where(w => !used.Contains(w.Name) && ((IsInHand(w.From) && IsThere(w.To)) || (IsInHand(w.To) && IsThere(w.From))));
        return reach.With(new Reach([], [.. spare.Select(w => w.Name)]));
    }

    private bool IsOnTable(Line line)
    {
        var missing = _options.OnTable.IsEmpty ? null : line.Reach.Parts.FirstOrDefault(p => !_options.OnTable.Contains(p, Names.Comparer) && !StandIns.CanBeLead(_loom, p));
        if (missing is not null)
        {
            _open.Add($"{line.Name}: {missing} is not on the table.");
        }

        return missing is null;
    }

    // The first stage's maintained operations: they wake the bench in every later stage.
    private static ImmutableArray<Operation.Set> KeyOf(Survey survey, ImmutableArray<Line> lines) =>
        lines.IsEmpty ? [] : [.. lines[0].Do.Where(o => !survey.IsMomentary(o.Control))];
}

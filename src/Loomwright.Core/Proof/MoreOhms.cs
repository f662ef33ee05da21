using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>
/// Measurements before power for faults that too few steps tell: of all pairs of points where one sits, the one that tells
/// most of them for its time, until no pair tells any. Ties by the order of the catalogue.
/// </summary>
/// <param name="proof">The stage as it stands.</param>
/// <param name="stage">Its steps.</param>
/// <param name="paths">The whole design.</param>
internal sealed class MoreOhms(StageProof proof, Stage stage, Paths paths)
{
    // A control is moved there and back, a fuse taken out and put in (judgement).
    private const double CostOfMoving = 2;
    private const double CostOfAFuse = 1.5;

    private readonly Wiring _wiring = proof.Looked.Played.Wiring;

    /// <summary>The stage with these steps in it, before the plugs go back in; the same stage when none helps.</summary>
    /// <param name="faults">What is to be told.</param>
    /// <param name="isHarm">Whether they harm: then every control is tried moved, not only those of the parts they sit on.</param>
    public Stage For(IReadOnlyCollection<Fault> faults, bool isHarm)
    {
        var left = faults.Select(f => new Ohmed.Touched(f)).Where(f => f.In(proof.Ohmed.Plugged).Exists).ToList();
        var candidates = left.SelectMany(f => Candidates(f.Fault, isHarm)).DistinctBy(r => r.Like).Where(r => !proof.Ohmed.Makes(r)).ToList();
        var tells = candidates.Select(c => left.Select(f => Ohmed.Catches(c, f) is not null && !IsSeenAtRest(c, f)).ToList()).ToList();
        var chosen = new List<(Ohmed.Reading Reading, List<Fault> For)>();
        var told = new bool[left.Count];
        while (candidates.Count > 0)
        {
            var best = Enumerable.Range(0, candidates.Count).MaxBy(c => New(c).Count() / Cost(candidates[c]));
            if (New(best).ToList() is not [_, ..] news)
            {
                break;
            }

            chosen.Add((candidates[best], [.. news.Select(f => left[f].Fault)]));
            news.ForEach(f => told[f] = true);
        }

        return chosen.Count == 0 ? stage : stage with { Steps = With(chosen) };

        IEnumerable<int> New(int candidate) => Enumerable.Range(0, left.Count).Where(f => tells[candidate][f] && !told[f]);
    }

    // The same tips at the same place with a control moved that does not matter are no second look.
    private bool IsSeenAtRest(Ohmed.Reading reading, Ohmed.Touched fault) => !reading.Positions.IsEmpty
        && proof.Ohmed.Try(reading.Red, reading.Black, reading.Off, reading.Positions.Clear()) is { } atRest && Ohmed.Catches(atRest, fault) is not null;

    private double Cost(Ohmed.Reading reading) => !reading.Positions.IsEmpty ? CostOfMoving : reading.Off.Length > proof.Ohmed.Low.Length ? CostOfAFuse : 1;

    private IEnumerable<Ohmed.Reading> Candidates(Fault fault, bool isHarm)
    {
        var ends = Ends.Of(fault, _wiring);
        foreach (var positions in Positions(ends, isHarm))
        {
            foreach (var off in Offs(ends, isHarm || !positions.IsEmpty))
            {
                foreach (var red in ends)
                {
                    foreach (var black in ends.Append(paths.Feed).Append(paths.Return))
                    {
                        if (IsThere(red) && IsThere(black) && proof.Ohmed.Try(red, black, off, positions) is { } reading)
                        {
                            yield return reading;
                        }
                    }
                }
            }
        }
    }

    // Where a lead stands in for a part, only the wires are there that would go to it.
    private bool IsThere(TerminalRef at) => MeterCards.InPlace(stage.Site, at).Length == 0 || stage.Connected.Wires.Any(w => w.From == at || w.To == at);

    // With the low loads off, with all plugs on; then with a fuse out where one is near: nothing may go round it.
    private IEnumerable<ImmutableArray<string>> Offs(ImmutableArray<TerminalRef> ends, bool isPlugsAlone)
    {
        var low = proof.Ohmed.Low;
        IEnumerable<ImmutableArray<string>> plugs = low.IsEmpty ? [low] : [low, []];
        var fuses = stage.Connected.Parts.Where(p => Fetching.IsFuse(p) && ends.Any(e => Names.Same(e.Part, p.Name)));
        return isPlugsAlone ? plugs : plugs.Concat(fuses.Select(f => low.Add(f.Name)));
    }

    // At rest, then with each control that has a part in the powered steps moved alone.
    private IEnumerable<ImmutableDictionary<string, string>> Positions(ImmutableArray<TerminalRef> ends, bool isHarm)
    {
        var rest = ImmutableDictionary<string, string>.Empty.WithComparers(Names.Comparer);
        yield return rest;
        foreach (var set in stage.Steps.Where(s => s.PowerOn).Select(s => s.Do).OfType<Operation.Set>().DistinctBy(s => (Names.Fold(s.Control), Names.Fold(s.Position))))
        {
            var control = _wiring.Controls.First(c => Names.Same(c.Name, set.Control));
            var isNear = isHarm || _wiring.Parts.Any(p => p.Model.Controls.Any(c => Names.Same(c.Name, control.Name)) && ends.Any(e => Names.Same(e.Part, p.Name)));
            if (isNear && !Names.Same(control.Rest, set.Position))
            {
                yield return rest.Add(control.Name, set.Position);
            }
        }
    }

    private ImmutableArray<Step> With(List<(Ohmed.Reading Reading, List<Fault> For)> chosen)
    {
        var steps = stage.Steps.ToList();
        foreach (var (reading, faults) in chosen.OrderBy(c => c.Reading.Off.IsEmpty))
        {
            var isLast = reading.Off.IsEmpty || steps.All(s => s.Act != Act.Measure || s.Unplugged.IsEmpty);
            var at = isLast ? steps.FindLastIndex(s => s.Act == Act.Measure) + 1 : steps.FindLastIndex(s => s.Act == Act.Measure && !s.Unplugged.IsEmpty) + 1;
            at = at == 0 ? steps.FindIndex(s => s.Act is not (Act.Fetch or Act.TakeOut or Act.Connect)) : at;
            steps.InsertRange(at, Written(reading, Finds.Of(faults, Mark)));
        }

        return Numbered.Added(stage.Number, steps);
    }

    private IEnumerable<Step> Written(Ohmed.Reading reading, string finds)
    {
        var tips = $"From {Tip(reading.Red)} to {Tip(reading.Black)}";
        if (reading.Positions.IsEmpty)
        {
            yield return One($"{tips}. {finds}", reading, null);
            yield break;
        }

        var (control, position) = reading.Positions.First();
        var atRest = proof.Ohmed.Try(reading.Red, reading.Black, reading.Off, reading.Positions.Clear())!;
        var rest = _wiring.Controls.First(c => Names.Same(c.Name, control)).Rest;
        yield return One($"{Does(new(control, position))} {tips}. {finds}", reading, new Operation.Set(control, position));
        yield return One($"{Does(new(control, rest))} {tips}.", atRest, new Operation.Set(control, rest));

        Step One(string text, Ohmed.Reading read, Operation.Set? move) => new("", Act.Measure, text)
        {
            Do = move,
            Unplugged = read.Off,
            Marks = [Mark(read.Red), Mark(read.Black)],
            Meter = MeterCards.Ohms(Tip(read.Red), Tip(read.Black), read.Band),
            Expect = [new Expectation($"{Tip(read.Red)} to {Tip(read.Black)}", Bands.Words(read.Band), read.Band)],
        };
    }

    private string Does(Operation.Set set) => stage.Site is { } site ? Hand.Does(site, set) : $"Set {set.Control} to {set.Position}.";

    private Mark Tip(TerminalRef at) => Mark(at) with { Instead = stage.Connected.Part(at.Part)?.Kind is "battery" or "bench supply" ? MeterCards.Clip : MeterCards.InPlace(stage.Site, at) };

    private Mark Mark(TerminalRef at) => new(at, paths.Terminal(at)?.Name);
}

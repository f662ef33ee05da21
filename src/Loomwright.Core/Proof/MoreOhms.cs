using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Proof;

/// <summary>
/// Measurements before power for harmful faults that no step catches yet: of all pairs of points where one sits, the one
/// that catches most of them, until no pair catches any. Ties by the order of the catalogue.
/// </summary>
internal sealed class MoreOhms(StageProof proof, Stage stage, Paths paths)
{
    /// <summary>The stage with these steps in it, before the plugs go back in; the same stage when none helps.</summary>
    public Stage For(IReadOnlyCollection<Fault> faults)
    {
        var left = faults.Select(f => (Fault: f, Touch: proof.Ohmed.Of(f))).Where(f => f.Touch.Plugged.Exists).ToList();
        var candidates = left.SelectMany(f => Candidates(f.Fault)).DistinctBy(r => (r.Red, r.Black, r.IsUnplugged, string.Join(";", r.Positions))).ToList();
        var chosen = new List<Ohmed.Reading>();
        var catches = candidates.Select(c => left.Select(f => Ohmed.Catches(c, f.Touch) is not null).ToList()).ToList();
        var caught = new bool[left.Count];
        while (candidates.Count > 0)
        {
            var best = Enumerable.Range(0, candidates.Count).MaxBy(c => catches[c].Where((is_, f) => is_ && !caught[f]).Count());
            if (!catches[best].Where((is_, f) => is_ && !caught[f]).Any())
            {
                break;
            }

            chosen.Add(candidates[best]);
            for (var f = 0; f < caught.Length; f++)
            {
                caught[f] |= catches[best][f];
            }
        }

        return chosen.Count == 0 ? stage : stage with { Steps = With(chosen) };
    }

    private IEnumerable<Ohmed.Reading> Candidates(Fault fault)
    {
        var ends = Ends.Of(fault, proof.Looked.Played.Wiring);
        foreach (var positions in Positions(fault))
        {
            foreach (var unplugged in new[] { true, false })
            {
                foreach (var red in ends)
                {
                    foreach (var black in ends.Append(paths.Feed).Append(paths.Return))
                    {
                        if (proof.Ohmed.Try(red, black, unplugged, positions) is { } reading)
                        {
                            yield return reading;
                        }
                    }
                }
            }
        }
    }

    // At rest, then with each control that has a part in the powered steps moved alone.
    private IEnumerable<ImmutableDictionary<string, string>> Positions(Fault fault)
    {
        var rest = ImmutableDictionary<string, string>.Empty.WithComparers(Names.Comparer);
        yield return rest;
        var played = proof.Looked.Played;
        var parts = Ends.Of(fault, played.Wiring).Select(e => e.Part).ToHashSet(Names.Comparer);
        foreach (var set in stage.Steps.Where(s => s.PowerOn).Select(s => s.Do).OfType<Operation.Set>().DistinctBy(s => (Names.Fold(s.Control), Names.Fold(s.Position))))
        {
            if (played.Wiring.Controls.First(c => Names.Same(c.Name, set.Control)) is var control && !Names.Same(control.Rest, set.Position))
            {
                yield return rest.Add(control.Name, set.Position);
            }
        }
    }

    private ImmutableArray<Step> With(List<Ohmed.Reading> chosen)
    {
        var steps = stage.Steps.ToList();
        foreach (var reading in chosen.OrderBy(r => !r.IsUnplugged))
        {
            var isLast = !reading.IsUnplugged || steps.All(s => s.Act != Act.Measure || s.Unplugged.IsEmpty);
            var at = isLast ? steps.FindLastIndex(s => s.Act == Act.Measure) + 1 : steps.FindLastIndex(s => s.Act == Act.Measure && !s.Unplugged.IsEmpty) + 1;
            at = at == 0 ? steps.FindIndex(s => s.Act is not (Act.Fetch or Act.TakeOut or Act.Connect)) : at;
            steps.InsertRange(at, Written(reading, steps.FirstOrDefault(s => !s.Unplugged.IsEmpty)?.Unplugged ?? []));
        }

        return Numbered.Of(stage.Number, steps);
    }

    private IEnumerable<Step> Written(Ohmed.Reading reading, ImmutableArray<string> off)
    {
        var tips = $"From {Mark(reading.Red)} to {Mark(reading.Black)}.";
        if (reading.Positions.IsEmpty)
        {
            yield return One(tips, reading, null);
            yield break;
        }

        var (control, position) = reading.Positions.First();
        var atRest = proof.Ohmed.Try(reading.Red, reading.Black, reading.IsUnplugged, reading.Positions.Clear())!;
        var rest = proof.Looked.Played.Wiring.Controls.First(c => Names.Same(c.Name, control)).Rest;
        yield return One($"With {control} at {position}: {tips}", reading, new Operation.Set(control, position));
        yield return One($"Back with {control} at {rest}: {tips}", atRest, new Operation.Set(control, rest));

        Step One(string text, Ohmed.Reading read, Operation.Set? move) => new("", Act.Measure, text)
        {
            Do = move,
            Unplugged = read.IsUnplugged ? off : [],
            Marks = [Mark(read.Red), Mark(read.Black)],
            Meter = MeterCards.Ohms(Mark(read.Red), Mark(read.Black), read.Band),
            Expect = [new Expectation($"{Mark(read.Red)} to {Mark(read.Black)}", Bands.Words(read.Band), read.Band)],
        };
    }

    private Mark Mark(TerminalRef at) => new(at, paths.Terminal(at)?.Name);
}

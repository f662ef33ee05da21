using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Where a wire leads through joints and plugs: what a hand finds that follows it along the bike.</summary>
internal sealed class Onward
{
    private readonly ILookup<TerminalRef, Wire> _wires;
    private readonly Dictionary<string, Model> _models;
    private readonly HashSet<string> _splices;

    public Onward(Loom loom)
    {
        _wires = loom.Wires.SelectMany(w => new[] { (End: w.From, w), (End: w.To, w) }).ToLookup(e => e.End, e => e.w);
        _models = loom.Parts.ToDictionary(p => p.Name, p => Kinds.Find(p.Kind)?.Build(p) ?? new Model { Terminals = [] }, Names.Comparer);
        _splices = loom.Parts.Where(p => p.Kind == "splice").Select(p => p.Name).ToHashSet(Names.Comparer);
    }

    /// <summary>The terminals of other parts that everything beyond an end of a wire leads to; grounds and battery posts are ends.</summary>
    public ImmutableArray<TerminalRef> Ends(TerminalRef end, Wire wire)
    {
        var ends = ImmutableArray.CreateBuilder<TerminalRef>();
        var seen = new HashSet<string>(StringComparer.Ordinal) { wire.Name };
        var open = new Queue<TerminalRef>([end]);
        while (open.TryDequeue(out var at))
        {
            var through = Through(at);
            if (through is null)
            {
                ends.Add(at);
                continue;
            }

            foreach (var next in _wires[through.Value].Concat(through == at ? [] : _wires[at]).Where(w => seen.Add(w.Name)))
            {
                open.Enqueue(next.From == through || next.From == at ? next.To : next.From);
            }
        }

        return [.. ends.Distinct()];
    }

    /// <summary>The wire that goes on where one ends in a plug or in a joint of two, and the terminal it goes on from; null where the way ends or parts.</summary>
    public (TerminalRef From, Wire Wire)? Next(TerminalRef end, Wire wire)
    {
        if (Through(end) is not { } through)
        {
            return null;
        }

        var next = _wires[through].Where(w => w != wire).Take(2).ToList();
        return next.Count == 1 ? (through, next[0]) : null;
    }

    // The same point for a splice, the other half of the cavity for a plug; null for anything that does something.
    private TerminalRef? Through(TerminalRef at)
    {
        if (!_models.TryGetValue(at.Part, out var model))
        {
            return null;
        }

        if (Returns.IsPlug(model))
        {
            return at with { Terminal = at.Terminal[..^1] + (at.Terminal.EndsWith('a') ? 'b' : 'a') };
        }

        return _splices.Contains(at.Part) ? at : null;
    }
}

using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Everything the writing of one stage looks at.</summary>
internal sealed record Site
{
    public required int Number { get; init; }

    public required Line Line { get; init; }

    /// <summary>The line of the stage before, or null in the first.</summary>
    public required Line? Previous { get; init; }

    /// <summary>The line that is shown once more: that of the stage before, or the last before it that is still plugged in.</summary>
    public required Line? Again { get; init; }

    /// <summary>What was made for seconds and has been shown, but would run on the key alone: off and capped.</summary>
    public required ImmutableArray<string> Aside { get; init; }

    public required ImmutableArray<string> AsideBefore { get; init; }

    /// <summary>What wakes the bench: done as the last act of power-up, undone as the first of power-down.</summary>
    public required ImmutableArray<Operation.Set> Key { get; init; }

    /// <summary>The whole design, bench changes included.</summary>
    public required Paths Whole { get; init; }

    public FeedSide FeedSide => field ??= new FeedSide(Whole);

    /// <summary>What is connected in this stage, and what was before it.</summary>
    public required Reach Reach { get; init; }

    public required Reach Before { get; init; }

    /// <summary>Printed ratings in this stage of the fuses next to the supply, and those before; empty in the first.</summary>
    public required ImmutableDictionary<string, double> Fuses { get; init; }

    public required ImmutableDictionary<string, double> FusesBefore { get; init; }

    /// <summary>Rating of the small fuse in the lead that can stand in for a key, by part, in this stage and the one before.</summary>
    public required ImmutableDictionary<string, double> LeadFuses { get; init; }

    public required ImmutableDictionary<string, double> LeadFusesBefore { get; init; }

    /// <summary>The design of what is connected.</summary>
    public required Loom Connected { get; init; }

    /// <summary>What earlier stages have shown to work.</summary>
    public required ImmutableHashSet<string> NewsBefore { get; init; }

    public required Once Once { get; init; }

    /// <summary>What the owner uses in place of a part, by part.</summary>
    public required ImmutableDictionary<string, string> StandIns { get; init; }

    public bool IsFirst => Previous is null;

    /// <summary>Whether a bench supply feeds it; it shows its own amps.</summary>
    public bool IsBench => Model(Whole.Source!.Name).Supply!.LimitAmps is not null;

    /// <summary>The load side of the one fuse at the supply where the meter stands in line: in the first stage, unless it is needed there for volts or the supply shows amps. Null: no meter in line.</summary>
    public TerminalRef? MeteredFuse => IsFirst && Line.End is null && !IsBench && Fuses.Count == 1
        ? Whole.Ties.Where(t => t.Via == Via.Fuse && Fuses.ContainsKey(t.Part!.Name)).Select(t => (TerminalRef?)(IsBare(t.A) ? t.B : t.A)).FirstOrDefault()
        : null;

    /// <summary>Whether anything is connected to battery minus.</summary>
    public bool HasBack => Connected.Wires.Any(w => w.From.Equals(Whole.Return) || w.To.Equals(Whole.Return));

    public IEnumerable<Part> NewParts => Whole.Loom.Parts.Where(p => Reach.Parts.Contains(p.Name, Names.Comparer) && !Before.Parts.Contains(p.Name, Names.Comparer));

    /// <summary>The starter's lead of what is connected: on after all else, off before it.</summary>
    public IEnumerable<(Wire Wire, TerminalRef End)> StarterLeads => Bench.StarterLeads.Of(Whole).Where(l => Reach.Wires.Contains(l.Wire.Name, Names.Comparer));

    /// <summary>New wires in the order to be connected.</summary>
    public IEnumerable<Wire> NewWires => Reach.Wires.Where(w => !Before.Wires.Contains(w, Names.Comparer)).Select(w => Whole.Loom.Wire(w)!);

    private bool IsBare(TerminalRef at) => Whole.Joined(Whole.Feed, t => t.Via is Via.Wire or Via.Joint).Contains(at);

    public Mark Mark(TerminalRef at) => new(at, Whole.Terminal(at)?.Name);

    public Model Model(string part) => Whole.Models[part];

    public bool IsKey(string control) => Key.Any(k => Names.Same(k.Control, control));

    /// <summary>Where a control's contact sits: its part.</summary>
    public Part? PartOf(string control) => Whole.Loom.Parts.FirstOrDefault(p => Whole.Models.GetValueOrDefault(p.Name)?.Controls.Any(c => Names.Same(c.Name, control)) == true);
}

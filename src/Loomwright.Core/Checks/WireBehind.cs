using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Sizing;

namespace Loomwright.Checks;

/// <summary>The wires whose guard is larger than the rule that counts allows, one for each guard and size.</summary>
internal sealed record WireBehind(Guard Guard, ImmutableArray<Wire> Wires, Surroundings Around, Verdict Verdict, AmpacityRule Chosen)
{
    /// <summary>A thicker wire behind the same guard that the rule accepts: the branch was taken off it.</summary>
    public Wire? Trunk { get; private init; }

    /// <summary>All of them, in file order.</summary>
    public static ImmutableArray<WireBehind> In(Study study)
    {
        var (loom, guards) = (study.Loom, study.Guards);
        var chosen = AmpacityRules.Of(loom.Conditions);
        var judged = loom.Wires.Select((wire, i) => (wire, guard: guards.Of(i), around: Verdict.Around(loom, wire)))
            .Where(x => x.guard is not null)
            .Select(x => (x.wire, guard: x.guard!, x.around, verdict: Verdict.Of(x.wire.Size, x.around, chosen, x.guard!)))
            .ToList();
        return
        [
            .. judged.Where(j => !j.verdict.Accepted).GroupBy(j => (j.guard, j.wire.Size)).Select(g => new WireBehind(
                g.Key.guard, [.. g.Select(j => j.wire)], g.MaxBy(j => j.around.Ambient.Celsius).around, g.MaxBy(j => j.around.Ambient.Celsius).verdict, chosen)
            {
                Trunk = judged.Where(j => j.guard == g.Key.guard && j.verdict.Accepted && j.wire.Size.SquareMillimetres > g.Key.Size.SquareMillimetres)
                    .Select(j => j.wire).FirstOrDefault(),
            }),
        ];
    }

    /// <summary>Look when every rule that lists the size rejects it; else a note. An output trips at its limit within moments, where a fuse stands a third more for good: there a note will do.</summary>
    public Severity Severity => Verdict.Accept.IsEmpty && Guard.Kind != GuardKind.Output ? Severity.Look : Severity.Note;

    /// <summary>Who accepts and who rejects it, in the air and the insulation it has.</summary>
    public string WhyTemplate => Verdict.Accept.IsEmpty
        ? "In air of {air} with {insulation} insulation every rule that lists this size rejects it: {rejects}."
        : "Published rules disagree: in air of {air} with {insulation} insulation {accepts} accept it, and {rejects} reject it.";

    /// <summary>What passes the rule, and that stricter ones still reject it.</summary>
    public string DoTemplate => (Guard.Kind != GuardKind.Output && Smaller is not null, Thicker is not null) switch
    {
        (true, true) => "A fuse of {smaller}, or {thicker} of wire, passes {rule}." + Still,
        (false, true) => "{thicker} of wire passes {rule}." + Still,
        (true, false) => "A fuse of {smaller} passes {rule}." + Still,
        _ => "Give it a fuse of its own where it begins.",
    };

    public ImmutableArray<Evidence> Facts =>
    [
        Evidence.Of("guard", Guard.InWords),
        Evidence.Of("wires", string.Join(", ", Wires.Select(w => w.Name))),
        Evidence.Of("size", Wires[0].Size),
        Evidence.Of("rule", Verdict.By!.Rule.Name),
        Evidence.Of("allowed", Verdict.By.Rule is var by && by == Chosen ? Amps(Verdict.By) : $"{Amps(Verdict.By)} ({Chosen.Name} does not list the size)"),
        Evidence.Of("air", Around.Ambient),
        Evidence.Of("insulation", Around.Insulation),
        .. Said("accepts", Named(Verdict.Accept)),
        .. Said("rejects", Named(Verdict.Reject)),
        .. Said("trunk", Trunk is null ? null : $"{Trunk.Name}, {Trunk.Size}"),
        .. Said("smaller", Smaller is { } amps ? new Current(amps).Printed : null),
        .. Said("thicker", Thicker?.ToString()),
        .. Said("stricter", string.Join(", ", Stricter)),
    ];

    private static ImmutableArray<Evidence> Said(string name, string? value) => string.IsNullOrEmpty(value) ? [] : [Evidence.Of(name, value)];

    private string Still => Stricter.Count == 0 ? "" : " Stricter rules still reject it: {stricter}.";

    /// <summary>The largest blade fuse the rule allows, or null.</summary>
    public double? Smaller => Sold.Blades.Select(b => b.Amps).LastOrDefault(a => a <= Sizing.Verdict.Largest(Verdict.By!, Guard.Kind).Amps) is > 0 and var amps ? amps : null;

    /// <summary>The thinnest size sold that passes the rule, or null.</summary>
    public CrossSection? Thicker => Sold.Wires
        .Where(s => s.SquareMillimetres > Wires[0].Size.SquareMillimetres && Verdict.By!.Rule.For(s, Around) is { } a && Sizing.Verdict.Passes(a, Guard))
        .Select(s => (CrossSection?)s).FirstOrDefault();

    // With the cure taken: the smaller fuse on this wire, else the thicker wire behind this one.
    private List<string> Stricter
    {
        get
        {
            var (size, guard) = Smaller is { } amps && Guard.Kind != GuardKind.Output ? (Wires[0].Size, Guard with { Rating = new Current(amps) }) : (Thicker ?? Wires[0].Size, Guard);
            return [.. Sizing.Verdict.Of(size, Around, Chosen, guard).Reject.Select(a => a.Rule.Name)];
        }
    }

    private string Named(ImmutableArray<Allowance> allowances) => string.Join(", ", allowances.Select(a => $"{a.Rule.Name} (up to {Amps(a)})"));

    // Never rounded up: 9.97 A does not allow a fuse of 10 A.
    private string Amps(Allowance allowed) => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor((Sizing.Verdict.Largest(allowed, Guard.Kind).Amps * 10) + 1e-6) / 10:0.#} A");
}

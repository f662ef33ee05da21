using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Sizing;

/// <summary>A guard before a wire, judged by every rule that lists the size.</summary>
/// <param name="By">The rule that counts, and what it allows: the one chosen, or where it does not list the size the usual one, then the strictest published, then any. Null when none lists it.</param>
/// <param name="Accept">What the rules allow that accept it.</param>
/// <param name="Reject">What the rules allow that reject it.</param>
internal sealed record Verdict(Allowance? By, ImmutableArray<Allowance> Accept, ImmutableArray<Allowance> Reject)
{
    /// <summary>True when the rule that counts accepts it, or there is none.</summary>
    public bool Accepted => By is null || Accept.Contains(By);

    public static Verdict Of(CrossSection size, Surroundings around, AmpacityRule chosen, Guard guard)
    {
        var all = AmpacityRules.All.Select(r => r.For(size, around)).OfType<Allowance>().ToList();
        return new(Standing(size, around, chosen), [.. all.Where(a => Passes(a, guard))], [.. all.Where(a => !Passes(a, guard))]);
    }

    /// <summary>What the rule that counts allows.</summary>
    public static Allowance? Standing(CrossSection size, Surroundings around, AmpacityRule chosen) =>
        new[] { chosen, AmpacityRules.Usual, AmpacityRules.Strictest }.Concat(AmpacityRules.All).Select(r => r.For(size, around)).FirstOrDefault(a => a is not null);

    public static bool Passes(Allowance allowed, Guard guard) => Largest(allowed, guard.Kind).Amps >= guard.Rating.Amps;

    /// <summary>The largest guard of that kind a rule allows.</summary>
    public static Current Largest(Allowance allowed, GuardKind kind) => kind == GuardKind.Breaker ? allowed.Breaker : allowed.Fuse;

    /// <summary>What a wire lies in: the warmer place of its two ends (cool +0, warm +15, hot +40 K).</summary>
    public static Surroundings Around(Loom loom, Wire wire)
    {
        double Gain(string part) => (loom.Part(part)?.Place is { } key ? loom.Places.FirstOrDefault(p => Names.Same(p.Key, key)) : null)?.Heat switch
        {
            Design.Heat.Warm => 15,
            Design.Heat.Hot => 40,
            _ => 0,
        };
        var conditions = loom.Conditions;
        return new Surroundings(new Temperature(conditions.Ambient.Celsius + Math.Max(Gain(wire.From.Part), Gain(wire.To.Part))), conditions.Insulation, conditions.Bundle);
    }
}

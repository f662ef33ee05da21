using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Cases;

/// <summary>Every single fault of a case's circuit weighed by how well it shows what was told.</summary>
/// <param name="Repairs">What sets it right with its share, the likeliest first.</param>
/// <param name="Rank">Place of a repair of the cause, from 1; null when the catalogue of the circuit has none of it.</param>
internal sealed record CaseRank(ImmutableArray<(string Repair, double Share)> Repairs, int? Rank)
{
    // What is told is wrong or told otherwise than meant once in ten; what does not hold is told all the same once in twenty (judgement).
    private const double Holds = 0.9, HoldsNot = 0.05;

    /// <summary>Plays every fault of the catalogue through all that was done.</summary>
    public static CaseRank Of(Loom loom, Case told)
    {
        var listed = Catalogue.List(loom);
        var repairs = listed
            .Select(f => (f.Repair, Weight: f.Prior() * Chance(loom, told, f.Fault)))
            .GroupBy(f => f.Repair, StringComparer.Ordinal)
            .Select(g => (Repair: g.Key, Weight: g.Sum(f => f.Weight)))
            .OrderByDescending(r => r.Weight).ThenBy(r => r.Repair, StringComparer.Ordinal)
            .ToList();
        var sum = repairs.Sum(r => r.Weight);
        var sought = told.Cause.Select(id => FaultText.Read(id, loom).Fault).OfType<Fault>().SelectMany(c => listed.Where(f => SameWork(f.Fault, c)).Select(f => f.Repair)).ToHashSet(StringComparer.Ordinal);
        var at = repairs.FindIndex(r => sought.Contains(r.Repair));
        return new([.. repairs.Select(r => (r.Repair, r.Weight / sum))], at < 0 ? null : at + 1);
    }

    private static double Chance(Loom loom, Case told, Fault fault) =>
        Trial.Of(loom, told with { Cause = [fault.ToString()] }).Compared.Aggregate(1.0, (p, c) => p * (c.WithCause.Holds ? Holds : HoldsNot));

    // The joint is the same whatever its ohms, a contact whatever its setting.
    private static bool SameWork(Fault listed, Fault cause) => Names.Same(listed.ToString(), cause.ToString()) || (listed, cause) switch
    {
        (Fault.High a, Fault.High b) => Names.Same(a.Joint, b.Joint),
        (Fault.High a, Fault.Open b) => Names.Same(a.Joint, b.Wire),
        (Fault.Open a, Fault.High b) => Names.Same(a.Wire, b.Joint),
        (Fault.Leak a, Fault.Leak b) => Names.Same(a.Part, b.Part),
        (Fault.Setting a, Fault.Setting b) => Names.Same(a.Part, b.Part) && Names.Same(a.Key, b.Key),
        _ => false,
    };
}

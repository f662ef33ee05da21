using System.Collections.Immutable;

namespace Loomwright.Faults;

/// <summary>One way a fault comes about: a row of the table of priors, and how many opportunities it has here.</summary>
/// <param name="Kind">The row's kind.</param>
/// <param name="Times">Opportunities; a part of one where several faults share it.</param>
public readonly record struct Cause(string Kind, double Times = 1);

/// <summary>A fault of the catalogue, with what sets it right and how it comes about.</summary>
/// <param name="Fault">What is wrong.</param>
/// <param name="Repair">What sets it right, in words; equal where the same work does.</param>
/// <param name="Causes">The ways it comes about.</param>
public sealed record ListedFault(Fault Fault, string Repair, ImmutableArray<Cause> Causes)
{
    /// <summary>How likely it is before anything was looked at, 0…1.</summary>
    public double Prior(PriorOptions? options = null)
    {
        options ??= new PriorOptions();
        return Causes.Sum(c => c.Times * Priors.Row(c.Kind).For(options));
    }
}

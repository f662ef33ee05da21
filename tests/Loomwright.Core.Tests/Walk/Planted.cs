using Loomwright.Design;
using Loomwright.Walk;

namespace Loomwright.Tests.Walk;

/// <summary>Small designs, each with one design error in it, and words for what a walk tells.</summary>
internal static class Planted
{
    public static Loom Loom(string name) => Examples.Read($"tests/Loomwright.Core.Tests/Walk/planted/{name}.loom.yaml");

    /// <summary>The operations on the way, as told.</summary>
    public static IEnumerable<string> Words(this IEnumerable<WalkStep> steps) => steps.Select(s => s.Words);

    public static Surprise Of(this Walked walked, SurpriseKind kind, string function) => walked.Surprises.Single(s => s.Kind == kind && s.Function == function);

    /// <summary><c>kind function</c> and the operations to it.</summary>
    public static IEnumerable<(string, int)> Named(this Walked walked) =>
        walked.Surprises.Select(s => ($"{s.Kind} {s.Function ?? string.Join(" and ", s.Parts.Select(p => p.Part))}", s.Steps.Length)).Order();
}

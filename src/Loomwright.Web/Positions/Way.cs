using Loomwright.Walk;

namespace Loomwright.Web.Positions;

/// <summary>The operations to a state, as a sentence.</summary>
internal static class Way
{
    public static string Of(IReadOnlyCollection<WalkStep> steps) => steps.Count == 0 ? "everything at rest" : string.Join("; ", steps.Select(s => s.Words));
}

using Loomwright.Faults;

namespace Loomwright.Web.Try;

/// <summary>A mistake that can be put in, in words.</summary>
/// <param name="Fault">What it is to the simulation.</param>
/// <param name="Sentence">What was done wrong, without full stop.</param>
/// <param name="About">The wire or part it is listed under.</param>
public sealed record Mistake(Fault Fault, string Sentence, string About)
{
    /// <summary>Whether every word typed is found in it, in any order.</summary>
    public bool Matches(string typed) => typed
        .Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .All(word => Sentence.Contains(word, StringComparison.OrdinalIgnoreCase) || About.Contains(word, StringComparison.OrdinalIgnoreCase));
}

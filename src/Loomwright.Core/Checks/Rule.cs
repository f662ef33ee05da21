using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>One thing `check` looks for.</summary>
/// <param name="Code">A slug in plain words, never reused; its page is <c>docs/findings/CODE.md</c>.</param>
/// <param name="Least">The mildest severity it gives.</param>
/// <param name="Most">The severest it gives.</param>
/// <param name="Sentence">What it looks for, in one sentence.</param>
/// <param name="Look">All it finds in a design, in file order.</param>
public sealed record Rule(string Code, Severity Least, Severity Most, string Sentence, Func<Study, ImmutableArray<Finding>> Look);

using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.ProjectFile;

namespace Loomwright.Fixes;

/// <summary>A change of the file that cures one finding; offered only where the cure is certain enough.</summary>
/// <param name="Id">What a person types, unique in the design: <c>exchange-tail-lamp</c>.</param>
/// <param name="Title">What it will change, in one sentence.</param>
/// <param name="For">The finding it cures.</param>
/// <param name="Edits">On the text the finding is about.</param>
public sealed record Fix(string Id, string Title, Finding For, ImmutableArray<Edit> Edits);

/// <summary>Lines of the file before and after, without what they have in common.</summary>
/// <param name="Line">Where they begin, from 1.</param>
/// <param name="Before">Empty when lines are only added.</param>
/// <param name="After">Empty when lines are only taken away.</param>
public sealed record LineChange(int Line, ImmutableArray<string> Before, ImmutableArray<string> After);

/// <summary>A fix tried on the text, with what the check then finds; nothing is written.</summary>
/// <param name="Fix">What was tried.</param>
/// <param name="Lines">What it changes, in file order; empty when it cannot be made.</param>
/// <param name="Objection">Why it should not be written, in a sentence; null when it cures its finding, brings no new stop or look, and raises no fuse.</param>
public sealed record TriedFix(Fix Fix, ImmutableArray<LineChange> Lines, string? Objection);

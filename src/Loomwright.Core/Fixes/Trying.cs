using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>Tries a fix on the text and checks the design it gives.</summary>
internal static class Trying
{
    public static TriedFix Of(DesignFile file, ImmutableArray<Finding> before, Fix fix)
    {
        if (file.Edit(fix.Edits) is not EditOutcome.Edited made)
        {
            return new TriedFix(fix, [], "It cannot be written without touching more than it; change it by hand.");
        }

        var changed = DesignFile.Read(made.Text);
        return new TriedFix(fix, LineChanges.Of(file.Text, made), Objection(file, before, fix, changed));
    }

    private static string? Objection(DesignFile file, ImmutableArray<Finding> before, Fix fix, DesignFile changed)
    {
        if (!changed.IsComplete)
        {
            return "The file could then not be read; change it by hand.";
        }

        var after = Rules.Check(changed.Loom!).AddRange(changed.Findings);
        var known = before.AddRange(file.Findings);
        return Raised(file.Loom!, changed.Loom!) is { } fuse ? $"It would raise {fuse}; a fuse is never raised."
            : after.Any(f => Same(f, fix.For)) ? "The finding would stay; look at it by hand."
            : after.FirstOrDefault(f => f.Severity > Severity.Note && !known.Any(k => Same(k, f))) is { } worse ? $"It would bring another: {worse.What}"
            : null;
    }

    private static bool Same(Finding one, Finding other) => one.Code == other.Code && (one.Where is Subject.Stretch || other.Where is Subject.Stretch ? one.What == other.What : one.Where == other.Where);

    // Every fuse and breaker keeps its rating or gets a smaller one, and none goes.
    private static string? Raised(Loom before, Loom after) => before.Parts
        .Where(p => RatingAmps(p) is { } was && (after.Part(p.Name) is not { } now || RatingAmps(now) is not { } then || then > was))
        .Select(p => p.Name)
        .FirstOrDefault();

    private static double? RatingAmps(Part part) => Kinds.Find(part.Kind)?.Build(part).Protectors is [{ RatingAmps: var amps }, ..] ? amps : null;
}

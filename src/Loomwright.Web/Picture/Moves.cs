using System.Collections.Immutable;
using Loomwright.Drawing;
using Loomwright.Live;
using Loomwright.ProjectFile;

namespace Loomwright.Web.Picture;

/// <summary>Where the boxes of the picture stand, changed in the file by one person on one page.</summary>
/// <param name="document">The design's live document.</param>
public sealed class Moves(LiveDocument document)
{
    private readonly string _who = $"picture {Guid.NewGuid():N}";
    private int _made;

    /// <summary>Something done here can be taken back.</summary>
    public bool CanUndo => _made > 0;

    /// <summary>Why nothing can be moved; null when it can.</summary>
    public string? ReadOnly => document.ReadOnly;

    /// <summary>Puts the upper left corner of a box somewhere. Null, or why it could not be.</summary>
    public string? Drag(string part, double x, double y)
    {
        var seen = document.Current;
        return seen.Bike.EditsToDrag(part, (int)Math.Round(x), (int)Math.Round(y)) is { } edits ? Write(seen.Sha256, edits) : $"There is no {part} any more.";
    }

    /// <summary>How the sheet would look arranged anew, beside how it looks. Takes seconds; writes nothing.</summary>
    public Arrangement Arrange()
    {
        var seen = document.Current;
        var edits = seen.Bike.EditsToArrange();
        var (before, after) = (seen.Bike.Overview(), seen.Bike.Edit(edits) is EditOutcome.Edited made ? Bike.Read(made.Text).Overview() : seen.Bike.Overview());
        return new(seen.Sha256, edits, Svg.Write(before), Svg.Write(after), Flaws.Of(before).Crossings, Flaws.Of(after).Crossings);
    }

    /// <summary>Writes an arrangement. Null, or why it could not be.</summary>
    public string? Keep(Arrangement arrangement) => Write(arrangement.Base, arrangement.Edits);

    /// <summary>Takes the last one back. Null, or why it could not be.</summary>
    public string? Undo()
    {
        var refused = Why(document.Undo(_who));
        _made -= refused is null ? 1 : 0;
        return refused;
    }

    private string? Write(string seen, ImmutableArray<Edit> edits)
    {
        var refused = edits.IsEmpty ? "It stands there already." : Why(document.Apply(seen, edits, _who));
        _made += refused is null ? 1 : 0;
        return refused;
    }

    private static string? Why(Written written) => written is Written.Refused no ? $"Nothing was moved: {no.What}. {no.Cure}." : null;
}

/// <summary>A sheet arranged anew, not yet written.</summary>
/// <param name="Base">Hash of the text it was made from.</param>
/// <param name="Before">The sheet as it stands, as SVG.</param>
/// <param name="After">The sheet as it would stand.</param>
/// <param name="CrossingsBefore">How often two wires cross now.</param>
/// <param name="CrossingsAfter">How often they would.</param>
public sealed record Arrangement(string Base, ImmutableArray<Edit> Edits, string Before, string After, int CrossingsBefore, int CrossingsAfter);

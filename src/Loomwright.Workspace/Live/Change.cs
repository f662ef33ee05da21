using System.Collections.Immutable;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Live;

/// <summary>A design as it stood or stands: its bytes' hash in lower-case hex, and the bike read from them.</summary>
public sealed record Revision(string Sha256, Bike Bike)
{
    /// <summary>The text, byte-order mark and line ends included.</summary>
    public SourceText Text => Bike.Text;
}

/// <summary>Where a change came from.</summary>
public enum ChangeKind
{
    /// <summary>Somebody's edit through this program.</summary>
    Edit,

    /// <summary>An earlier change taken back.</summary>
    Undo,

    /// <summary>What was taken back, made again.</summary>
    Redo,

    /// <summary>Written on the disk by another program.</summary>
    Outside,
}

/// <summary>One change of a design, never altered once it is in the list.</summary>
/// <param name="Base">Hash of the text it was made on.</param>
/// <param name="Before">That text.</param>
/// <param name="Replacements">The stretches of it that were replaced, in file order.</param>
/// <param name="Who">Who made it, as the caller names them.</param>
/// <param name="Kind">Where it came from.</param>
/// <param name="Result">Hash of the text it gave.</param>
public sealed record Change(string Base, SourceText Before, ImmutableArray<Replacement> Replacements, string Who, ChangeKind Kind, string Result);

/// <summary>What came of a wish to change a design.</summary>
public abstract record Written
{
    private Written()
    {
    }

    /// <summary>It is in the file on the disk.</summary>
    public sealed record Saved(Revision Now) : Written;

    /// <summary>Nothing was written; the wish can be made again after the cure.</summary>
    public sealed record Refused(string What, string Cure) : Written;
}

using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>How a terminal is called to its owner: the mark and the name together.</summary>
internal static class Called
{
    /// <summary><c>box X4 (stop lamp)</c>; a part that is one point by its name alone.</summary>
    public static string At(Paths paths, TerminalRef at) => At(at, paths.Terminal(at)?.Name);

    /// <summary>The same with the name at hand.</summary>
    public static string At(TerminalRef at, string? name)
    {
        var place = at.Terminal.Length == 0 ? at.Part : $"{at.Part} {at.Terminal}";
        return name is null || Names.Same(name, at.Terminal) ? place : $"{place} ({name})";
    }
}

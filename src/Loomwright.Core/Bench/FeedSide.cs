using Loomwright.Checks;
using Loomwright.Design;

namespace Loomwright.Bench;

/// <summary>What the supply feeds in some state of the bike, and what is always joined to its other side: between the two, no ohms at all are a short.</summary>
internal sealed class FeedSide(Paths paths)
{
    private readonly HashSet<TerminalRef> _fed = paths.Joined(paths.Feed, t => t.Carries && t.Via != Via.Diode);
    private readonly HashSet<TerminalRef> _home = paths.Joined(paths.Return, t => t.Via is Via.Wire or Via.Joint);

    /// <summary>Whether one of two terminals is fed and the other is home.</summary>
    public bool IsAcross(TerminalRef a, TerminalRef b) => (_fed.Contains(a) && _home.Contains(b)) || (_home.Contains(a) && _fed.Contains(b));
}

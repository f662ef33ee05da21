using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>What a tie goes through.</summary>
internal enum Via
{
    Wire,
    Joint,
    Contact,
    Fuse,
    Output,

    /// <summary>A contact that a coil or a flasher moves.</summary>
    Relay,
    Diode,
    Load,
}

/// <summary>One way from terminal to terminal.</summary>
internal sealed record Tie(Via Via, TerminalRef A, TerminalRef B)
{
    public Wire? Wire { get; init; }

    public Part? Part { get; init; }

    public Element? Element { get; init; }

    /// <summary>True for all but loads: what a feed or a way back may run through in some state of the bike.</summary>
    public bool Carries => Via is not Via.Load;

    /// <summary>True for what always conducts while it is whole.</summary>
    public bool IsFixed => Via is Via.Wire or Via.Joint or Via.Fuse;

    public TerminalRef Other(TerminalRef at) => at.Equals(A) ? B : A;

    /// <summary>Whether it conducts with the controls as given; outputs and loads do not.</summary>
    public bool IsClosed(IReadOnlyDictionary<string, string> positions) => Via switch
    {
        Via.Wire or Via.Joint or Via.Fuse => true,
        Via.Contact when Element?.Gate is Gate.ByControl gate =>
            positions.TryGetValue(gate.Control, out var at) && gate.ClosedIn.Any(p => Names.Same(p, at)),
        _ => false,
    };
}

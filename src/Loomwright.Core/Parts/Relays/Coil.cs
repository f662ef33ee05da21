using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>What every coil that moves a contact has in common.</summary>
internal static class Coil
{
    // A plain 12 V relay: pulled in at two thirds of its volts at the latest, let go between a tenth and a half (from memory).
    public static readonly Amount PullIn = new("pull-in", "Volts across its coil from which it pulls in.", Unit.Volt, 1, 24, 8);
    public static readonly Amount DropOut = new("drop-out", "Volts at which it lets go again.", Unit.Volt, 0.1, 20, 3);

    /// <summary>The relay of one winding; its two limits apart.</summary>
    public static Relay Of(Settings settings, double coilOhms, Marks marks)
    {
        var (pullIn, dropOut) = (PullIn.Of(settings), DropOut.Of(settings));
        if (dropOut >= pullIn)
        {
            marks.Complain("drop-out", "it would let go at more volts than it pulls in at", "write the lower voltage under drop-out");
            dropOut = pullIn / 2;
        }

        return new Relay("coil", ["coil"], pullIn / coilOhms, dropOut / coilOhms);
    }

    /// <summary>A contact that this coil moves.</summary>
    public static Element Contact(string name, string from, string to, Ohms closed, bool whenPulledIn) =>
        new(name, from, to, closed) { Gate = new Gate.ByRelay("coil", whenPulledIn) };
}

using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>What every contact has in common.</summary>
internal static class Contact
{
    public static readonly Amount Closed = new("contact", "Resistance of a closed contact; a worn one has more.", Unit.Ohm, 0.0001, 100, 0.020);
    public static readonly Amount Leak = new("leaks", "Resistance of an open contact that leaks: dirt, carbon, salt water. Left out: it does not.", Unit.Ohm, 1, 1e9);

    /// <summary>An open contact's curve.</summary>
    public static Ohms Open(Settings settings) => Leak.Given(settings) is { } ohms ? new Ohms(ohms) : Ohms.OpenContact;
}

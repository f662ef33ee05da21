using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>What every hand-operated contact has in common.</summary>
internal static class Contact
{
    public static readonly Amount Closed = new("contact", "Resistance of a closed contact.", Unit.Ohm, 0.0001, 100, 0.020);
}

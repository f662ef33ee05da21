using Loomwright.Quantities;

namespace Loomwright.Web.Try;

/// <summary>Numbers as a person reads them on the wire: which way is told by place, so no minus sign, and next to nothing is "0 A".</summary>
internal static class Flow
{
    /// <summary>Leakage below this is what an open contact passes in the model, and no hand meter shows it.</summary>
    private const double NothingBelowAmps = 50e-6;

    public static string Text(Current current) => Nothing(current) ? "0 A" : new Current(Math.Abs(current.Amps)).ToString();

    /// <summary>The same with a space that no line ends at, for running text.</summary>
    public static string Unbroken(Current current) => Text(current).Replace(' ', '\u00A0');

    /// <summary>Volts across a load: which lead is the higher is told by its marks.</summary>
    public static string Across(Voltage voltage) => new Voltage(Math.Abs(voltage.Volts)).ToString();

    public static bool Nothing(Current current) => Math.Abs(current.Amps) < NothingBelowAmps;
}

using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A bench supply: holds its volts until its current limit, then holds its amps (docs/models/bench-supply.md).</summary>
internal static class BenchSupplyKind
{
    // Leads and regulation together (judgement, no source).
    private const double OutputOhms = 0.010;

    private static readonly Amount Volts = new("volts", "What it is set to.", Unit.Volt, 1, 30, 13);
    private static readonly Amount Limit = new("limit", "Where its current limit is set.", Unit.Amp, 0.01, 100, 5);

    public static Kind Kind { get; } = new("bench supply", "A mains supply with set volts and a current limit, in place of the battery on the bench.", [Volts.Parameter, Limit.Parameter], Build);

    private static Model Build(Part part)
    {
        var limitAmps = Limit.Of(part.Settings);
        return new Model
        {
            Terminals = [new Terminal("+", Role.Plus), new Terminal("-", Role.Minus)],
            Elements = [new Element("output", "+", "-", new LimitedSource(Volts.Of(part.Settings), OutputOhms, limitAmps))],
            Supply = new Supply("+", "-", "output", limitAmps),
            Polarity = ("+", "-"),
            WrongSettings = [new WrongSetting(Volts.Key, "9 V", WrongSetting.Set), new WrongSetting(Limit.Key, "0.5 A", WrongSetting.Set)],
        };
    }
}

using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Sizing;

/// <summary>The currents at which a wire's conductor passes its insulation's class where it lies, its hot place and its bundle taken in.</summary>
/// <param name="Heat">How warm it gets.</param>
/// <param name="Around">What it lies in.</param>
internal sealed record WireLimit(Heat Heat, Surroundings Around)
{
    /// <summary>How long a start takes (judgement).</summary>
    public const double StartSeconds = 10;

    /// <summary>Of a wire, by the design's rule.</summary>
    public static WireLimit Of(Loom loom, Wire wire)
    {
        var around = Verdict.Around(loom, wire);
        return new(Heat.Of(wire.Size, around, AmpacityRules.Of(loom.Conditions)), around);
    }

    /// <summary>Whether the air around it alone passes its insulation's class.</summary>
    public bool IsAirTooHot => Around.Ambient.Celsius >= Around.Insulation.Celsius;

    /// <summary>Settled; 0 where the air alone is too hot.</summary>
    public double ForLongAmps => AmpsFor(1);

    /// <summary>After <see cref="StartSeconds"/> from the air's temperature; 0 where the air alone is too hot.</summary>
    public double StartingAmps => AmpsFor(1 - Math.Exp(-StartSeconds / Heat.TimeConstantSeconds));

    /// <summary>Whether a starter turns in a moment.</summary>
    public static bool IsStart(Loom loom, Frame frame) => frame.Seen.Any(s => s.Symbol == Symbol.Turns && Names.Same(loom.Part(s.Part)?.Kind ?? "", "starter"));

    private double AmpsFor(double shareOfTheWay) => Math.Sqrt(Math.Max(0, Around.Insulation.Celsius - Around.Ambient.Celsius) / (Heat.KelvinPerSquareAmp * shareOfTheWay));
}

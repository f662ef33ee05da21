using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A lump of metal that currents return through: frame, engine, fork (docs/models/ground-body.md).</summary>
internal static class GroundBodyKind
{
    // Between none and some ohms, changing as it turns (judgement, no source).
    private const double BearingOhms = 0.5;

    private static readonly Pick Body = new("body", "What it is.", ["frame", "engine", "fork", "other"]);
    private static readonly Parameter JoinedTo = new("joined to", "The ground body it sits on. Left out: none; then only wires join it to anything.", new Form.Text());

    private static readonly Pick Through = new(
        "through", "What lies between the two: bolts on bare metal, a head bearing (an unreliable joint), or rubber, which joins nothing.", ["bolts", "head bearing", "rubber"]);

    private static readonly Amount Resistance = new(
        "resistance", "Measured between the two. Left out: 2.5 mΩ through bolts, 0.5 Ω through a head bearing.", Unit.Ohm, 0.0001, 1e6);

    public static Kind Kind { get; } = new(
        "ground body",
        "The metal of frame, engine or fork; one point, at ground only through wires and what it sits on.",
        [Body.Parameter, JoinedTo, Through.Parameter, Resistance.Parameter],
        Build);

    private static Model Build(Part part)
    {
        var model = new Model { Terminals = [new Terminal("", Role.Lead)] };
        var through = Through.Of(part.Settings);
        if (part.Settings.Word(JoinedTo.Key) is not { } other)
        {
            return model;
        }

        if (Text.Names.Same(other, part.Name))
        {
            return model with { Problems = [new Problem(JoinedTo.Key, "it is joined to itself", "name the other ground body")] };
        }

        var ohms = Resistance.Given(part.Settings) ?? (through == "head bearing" ? BearingOhms : Mount.GoodOhms);
        return through == "rubber" && Resistance.Given(part.Settings) is null ? model : model with { Joints = [new Joint("", other, new Ohms(ohms))] };
    }
}

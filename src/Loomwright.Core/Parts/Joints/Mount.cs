using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>A part whose metal case is one of its terminals and sits on a ground body (docs/models/ground-body.md).</summary>
internal static class Mount
{
    /// <summary>The terminal that is the case.</summary>
    public const string Case = "body";

    // A bond between metal parts counts as good up to here (FAA AC 43.13-1B and aircraft practice).
    public const double GoodOhms = 0.0025;

    private static readonly Parameter On = new(
        "mounted on", $"The ground body its metal case is bolted to; its terminal {Case} is then grounded there. Left out: it has no ground through its mount.", new Form.Text());

    private static readonly Amount Resistance = new("mount resistance", "Of the metal between its case and the ground body.", Unit.Ohm, 0.0001, 1e6, GoodOhms);

    /// <summary>A kind whose parts may be grounded through their mount.</summary>
    public static Kind Able(Kind kind) => kind with
    {
        Parameters = [.. kind.Parameters, On, Resistance.Parameter],
        Build = part => Mounted(part.Settings, kind.Build(part)),
    };

    public static bool IsIn(Settings settings) => settings.Word(On.Key) is not null;

    private static Model Mounted(Settings settings, Model model) =>
        settings.Word(On.Key) is not { } on ? model
        : model.Terminals.FirstOrDefault(t => Names.Same(t.Mark, Case)) is { } metal
            ? model with { Joints = model.Joints.Add(new Joint(metal.Mark, on, new Ohms(Resistance.Of(settings)))) }
            : model with { Problems = model.Problems.Add(new Problem(On.Key, $"none of its leads is called {Case}", $"call the terminal that is its metal case {Case}")) };
}

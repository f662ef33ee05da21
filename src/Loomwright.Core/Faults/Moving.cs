using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>What moves some contacts: a control of a part, or its coil.</summary>
/// <param name="Part">The part whose contacts they are.</param>
/// <param name="Control">The control they follow, or null for a coil's.</param>
internal sealed record Moving(string Part, string? Control)
{
    /// <summary>Where a relay can stick.</summary>
    private static readonly string[] OfCoil = [Relay.PulledIn, Relay.Released];

    /// <summary>What the owner calls a switch, by the name of its part or of one control of several, that knows the position; null when there is none.</summary>
    public static Moving? Find(Loom loom, string name, string at) =>
        loom.Parts.SelectMany(Of).Where(m => Names.Same(m.Name, name) && m.Positions.Any(p => Names.Same(p, at))).Select(m => m.Moving).FirstOrDefault();

    /// <summary>Everything of a part that can stick, by the name it is called and its positions.</summary>
    public static IEnumerable<(string Name, Moving Moving, IReadOnlyList<string> Positions)> Of(Part part)
    {
        var model = Kinds.Find(part.Kind)?.Build(part);
        if (model is null)
        {
            yield break;
        }

        foreach (var control in model.Controls.Where(c => model.Elements.Any(e => Uses(e.Gate, c.Name))))
        {
            yield return (model.Controls.Length > 1 ? control.Name : part.Name, new Moving(part.Name, control.Name), control.Positions);
        }

        if (model.Relays.Any(r => r.Clicks))
        {
            yield return (part.Name, new Moving(part.Name, null), OfCoil);
        }
    }

    private static bool Uses(Gate? gate, string control) => gate switch
    {
        Gate.ByControl g => Names.Same(g.Control, control),
        Gate.Both b => Uses(b.One, control) || Uses(b.Other, control),
        _ => false,
    };
}

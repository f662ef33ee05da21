using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>A way back that is missing: a wire to the ground stud, where exactly one stands in the same place and has a way back itself.</summary>
internal static class GroundWire
{
    // Within one place.
    private static readonly Length Near = new(0.3);

    public static IEnumerable<Cure> Of(Pen pen, Finding finding)
    {
        TerminalRef? lost = finding.Where switch
        {
            Subject.OfTerminal at => at.Terminal,
            Subject.OfPart part => new TerminalRef(part.Part, ""),
            _ => null,
        };
        if (lost is not { } node || pen.Loom.Part(node.Part) is not { Place: { } place })
        {
            yield break;
        }

        var grounded = pen.Study.Paths.Joined(pen.Study.Paths.Return, t => t.Via is Via.Wire or Via.Joint);
        var studs = pen.Loom.Parts.Where(p => Names.Same(p.Kind, "ground stud") && p.Place is { } at && Names.Same(at, place) && grounded.Contains(new TerminalRef(p.Name, ""))).ToList();
        var sizes = pen.Loom.Wires.Where(w => Names.Same(w.From.Part, node.Part) || Names.Same(w.To.Part, node.Part)).Select(w => w.Size).ToList();
        if (studs is [var stud] && sizes.Count > 0)
        {
            var size = sizes.MaxBy(s => s.SquareMillimetres);
            yield return new Cure("ground", node.ToString(), $"Draw a wire of {size} from {node} to {stud.Name}", [pen.AddWire(node, new TerminalRef(stud.Name, ""), size, Near)]);
        }
    }
}

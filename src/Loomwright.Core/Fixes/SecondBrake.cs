using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>A brake switch with one lead left open: it goes where the other brake's lead goes.</summary>
internal static class SecondBrake
{
    public static IEnumerable<Cure> Of(Pen pen, Finding finding)
    {
        var brakes = Brakes.In(pen.Study.Poses);
        if (finding.Where is not Subject.OfPart { Part: var name }
            || brakes.FirstOrDefault(b => Names.Same(b.Part.Name, name)) is not { } dark
            || brakes.Where(b => !b.Lights.IsEmpty && b != dark).ToList() is not [var lit])
        {
            yield break;
        }

        var (own, others) = (Leads(pen, dark.Part), Leads(pen, lit.Part));
        if (own.Where(t => pen.On(t).IsEmpty).ToList() is not [var free] || own.Where(t => !pen.On(t).IsEmpty).ToList() is not [var wired] || others.Count != 2)
        {
            yield break;
        }

        var joined = pen.Study.Paths.Joined(wired, t => t.Via is Via.Wire or Via.Joint or Via.Fuse);
        if (others.Where(t => !joined.Contains(t)).ToList() is [var to] && pen.On(to) is [var beside, ..])
        {
            yield return new Cure("join", name, $"Draw a wire of {beside.Size} from {free} to {to}, as {lit.Part.Name} has it", [pen.AddWire(free, to, beside.Size, beside.Length)]);
        }
    }

    private static List<TerminalRef> Leads(Pen pen, Part part) => [.. pen.Study.Paths.Models[part.Name].Terminals.Select(t => new TerminalRef(part.Name, t.Mark))];
}

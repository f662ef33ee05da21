using Loomwright.Checks;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>A kill switch written down with the other sense than its wiring wants.</summary>
internal static class KillSense
{
    public static IEnumerable<Cure> Of(Pen pen, Finding finding)
    {
        if (finding.Where is Subject.OfPart { Part: var name } && KillSwitches.In(pen.Study.Poses).Any(k => Names.Same(k.Part.Name, name) && !k.Runs))
        {
            var other = Names.Same(pen.Loom.Part(name)!.Settings.Word("stops by") ?? "", "closing") ? "opening" : "closing";
            yield return new Cure("sense", name, $"Write that {name} stops by {other}; measure it first", [pen.Setting(name, other, "stops by")]);
        }
    }
}

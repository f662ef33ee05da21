using System.Globalization;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>What is cured in the settings of a box: its blink rate, what wakes it, an output that should not blink.</summary>
internal static class BoxRules
{
    // The middle of what every table allows.
    private const double UsualPerMinute = 85;

    public static IEnumerable<Cure> BlinkRate(Pen pen, Finding finding) =>
        from box in pen.Study.Poses.Wiring.Boxes
        where box.Facts.BlinksPerMinute is < 60 or > 120 && box.Facts.Outputs.Any(o => o.When is Expression.Blinking && Feeds(pen, box, o, finding))
        let rate = UsualPerMinute.ToString("0", CultureInfo.InvariantCulture)
        select new Cure("blink", box.Part, $"Let {box.Part} blink {rate} times a minute, if it can be set", [pen.Setting(box.Part, rate, "blink rate")]);

    public static IEnumerable<Cure> Wake(Pen pen, Finding finding)
    {
        if (finding.Where is not Subject.OfPart { Part: var control })
        {
            yield break;
        }

        foreach (var box in pen.Study.Poses.Wiring.Boxes)
        {
            if (box.Facts.Inputs.Where(i => i.Button is null && IsJoined(pen, new TerminalRef(box.Part, i.Terminal), control)).ToList() is [var input])
            {
                var awake = new Expression.Or(box.Facts.Awake, new Expression.Named(input.Name)).ToString();
                yield return new Cure("wake", box.Part, $"Let {input.Name} wake {box.Part} too: awake: {awake}", [pen.Setting(box.Part, awake, "awake")]);
            }
        }
    }

    public static IEnumerable<Cure> Steady(Pen pen, Finding finding) =>
        from box in pen.Study.Poses.Wiring.Boxes
        from output in box.Facts.Outputs
        where output.When is Expression.Blinking && Feeds(pen, box, output, finding)
        let term = ((Expression.Blinking)output.When).Term.ToString()
        select new Cure("steady", output.Name, $"Let {box.Part} {output.Terminal} burn steadily: when: {term}", [pen.Setting(box.Part, term, "outputs", output.Name, "when")]);

    private static bool Feeds(Pen pen, Box box, Output output, Finding finding) =>
        finding.Where is Subject.OfPart lamp && IsJoined(pen, new TerminalRef(box.Part, output.Terminal), lamp.Part);

    private static bool IsJoined(Pen pen, TerminalRef terminal, string part) => pen.Study.Paths.Joined(terminal, t => t.Via is Via.Wire or Via.Joint).Any(t => Names.Same(t.Part, part));
}

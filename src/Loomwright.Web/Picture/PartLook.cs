using Loomwright.Simulation;
using Loomwright.Text;
using Loomwright.Web.Try;

namespace Loomwright.Web.Picture;

/// <summary>A part in the picture.</summary>
/// <param name="Part">Its name.</param>
/// <param name="Is">lit, on, weak, bad, or empty: how its outline is filled.</param>
/// <param name="Says">The word on it: what is seen of it, or where its control stands; empty when there is nothing to say.</param>
/// <param name="Differs">Says something else than in the healthy bike.</param>
internal sealed record PartLook(string Part, string Is, string Says, bool Differs)
{
    /// <param name="controls">Names of the controls on the part.</param>
    public static PartLook Of(Shown view, string part, IEnumerable<string> controls)
    {
        var (state, says) = At(view.Now, part, controls);
        return new(part, state, says, view.Healthy is not null && At(view.Healthy, part, controls).Says != says);
    }

    private static (string Is, string Says) At(Frame frame, string part, IEnumerable<string> controls)
    {
        var seen = frame.Seen.Where(s => s.Part == part).ToList();
        if (seen.Count > 0)
        {
            return (seen.Any(s => On(s.Symbol)) ? (seen.Any(s => s.LightShare is not null) ? "lit" : "on") : seen.Any(s => s.Symbol == Symbol.Dim) ? "weak" : "", string.Join(", ", seen.Where(s => !Resting(s.Symbol)).Select(s => Told(s, part))));
        }

        if (frame.Fuses.FirstOrDefault(f => f.Part == part) is { } fuse)
        {
            return fuse.State switch
            {
                FuseState.Whole => ("", Flow.Text(fuse.Current)),
                FuseState.Overloaded => ("bad", "overloaded"),
                FuseState.Blown => ("bad", "blown"),
                FuseState.Cycling => ("bad", "opens, closes"),
            };
        }

        if (frame.Controllers.FirstOrDefault(c => c.Part == part) is { } box)
        {
            return (box.Awake ? "on" : "", box.Awake ? "awake" : "asleep");
        }

        if (frame.Relays.FirstOrDefault(r => r.Part == part) is { } relay)
        {
            return (relay.PulledIn ? "on" : "", relay.PulledIn ? "pulled in" : "");
        }

        return ("", string.Join(", ", controls.Select(c => frame.Controls.FirstOrDefault(s => Names.Same(s.Control, c))).Where(s => s is { AtRest: false }).Select(s => s!.Position)));
    }

    private static string Told(Seen seen, string part) => seen.Name == part ? Words.Of(seen.Symbol) : $"{seen.Name[(part.Length + 1)..]} {Words.Of(seen.Symbol)}";

    private static bool On(Symbol symbol) => !Resting(symbol) && symbol != Symbol.Dim;

    private static bool Resting(Symbol symbol) => symbol is Symbol.Dark or Symbol.Silent or Symbol.Rests;
}

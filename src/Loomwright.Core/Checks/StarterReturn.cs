using System.Collections.Immutable;
using Loomwright.Design;

namespace Loomwright.Checks;

/// <summary>The thickest way of a starter's current, there and back.</summary>
/// <param name="Starter">Its name.</param>
/// <param name="At">Where its current leaves it.</param>
/// <param name="Cable">The thinnest wire of the thickest way from the battery to it.</param>
/// <param name="Strap">The thinnest wire of the thickest way back.</param>
/// <param name="Amps">What flows in that while it turns, as computed; 0 when it was never seen to turn.</param>
internal sealed record StarterReturn(string Starter, TerminalRef At, Wire Cable, Wire Strap, double Amps)
{
    // A strap has at least this share of the cable; what is thinner is a wire of the loom (judgement, no source).
    private const double StrapShare = 0.25;

    public bool IsThin => Strap.Size.SquareMillimetres < Cable.Size.SquareMillimetres * 0.99;

    public bool IsNoStrap => Strap.Size.SquareMillimetres < Cable.Size.SquareMillimetres * StrapShare;

    public static IEnumerable<StarterReturn> In(Study study)
    {
        var paths = study.Paths;
        foreach (var motor in paths.Source is null ? [] : paths.Ties.Where(t => t.Via == Via.Load && t.Part!.Kind == "starter"))
        {
            foreach (var (live, back) in new[] { (motor.A, motor.B), (motor.B, motor.A) })
            {
                if (Thinnest(paths, back, paths.Return, t => t.Via == Via.Joint) is { } strap && Thinnest(paths, live, paths.Feed, t => t.Carries) is { } cable)
                {
                    var link = paths.Loom.Wires.IndexOf(strap);
                    yield return new StarterReturn(motor.Part!.Name, back, cable, strap, study.Tried.Moments.Max(m => Tried.Amps(m, link)));
                }
            }
        }
    }

    private static Wire? Thinnest(Paths paths, TerminalRef from, TerminalRef to, Func<Tie, bool> through) => paths.Loom.Wires.Select(w => w.Size.SquareMillimetres).Distinct().OrderDescending()
        .Select(least => paths.Way(from, t => t.Equals(to), t => t.Wire is { } wire ? wire.Size.SquareMillimetres >= least : through(t)))
        .FirstOrDefault(way => way is not null)?
        .Select(t => t.Wire).OfType<Wire>().MinBy(w => w.Size.SquareMillimetres);
}

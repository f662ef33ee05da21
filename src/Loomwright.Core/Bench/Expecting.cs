using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Simulation;

namespace Loomwright.Bench;

/// <summary>Turns a simulated frame into what is to be seen and read.</summary>
internal static class Expecting
{
    /// <summary>Each box's lights, each lamp and horn, fuses that are not whole, what the supply gives.</summary>
    public static ImmutableArray<Expectation> Of(Site site, Frame frame) =>
    [
        .. frame.Controllers.Select(c => Lights(site, c)),
        .. frame.Seen.Select(s => new Expectation(s.Name, Words.Of(s.Symbol))),
        .. frame.Fuses.Where(f => f.State != FuseState.Whole).Select(f => new Expectation(f.Part, f.State == FuseState.Blown ? "blows" : "overloaded")),
        .. Supply(site, frame),
    ];

    private static Expectation Lights(Site site, ControllerSeen box)
    {
        var state = box.Awake ? "awake" : "asleep";
        if (box.Lights.IsEmpty)
        {
            return new Expectation(box.Part, state);
        }

        var on = box.Lights.Where(l => l.Symbol != Symbol.Dark).Select(l =>
            $"{Called.At(site.Whole, new(box.Part, l.Terminal))[(box.Part.Length + 1)..]} {Words.OfLight(l.Symbol)}").ToList();
        var lights = on.Count == 0 ? "no light on" : $"{string.Join(", ", on)}; no other light";
        return new Expectation($"lights on {box.Part}", $"{lights} ({state})");
    }

    private static IEnumerable<Expectation> Supply(Site site, Frame frame)
    {
        if (frame.Phases.IsEmpty || !site.HasBack)
        {
            yield break;
        }

        var band = frame.Phases.Select(p => Bands.Of(p.Supply)).Aggregate(Bands.Both);
        var swings = frame.Phases.Length > 1 ? ", swinging" : "";
        var source = site.Whole.Source!.Name;
        yield return site.MeteredFuse is not null || site.IsBench
            ? new Expectation($"current from {source}", Bands.OnTenAmps(band) + swings, Bands.Hundredths(band))
            : new Expectation($"current from {source}, were a meter in line", Bands.Words(band) + swings, band) { IsShown = false };
    }
}

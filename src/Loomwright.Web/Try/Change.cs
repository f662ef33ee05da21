using System.Globalization;
using Loomwright.Simulation;

namespace Loomwright.Web.Try;

/// <summary>One difference from the healthy bike in the same positions, in words.</summary>
/// <param name="Who">The lamp, light, fuse, box or wire.</param>
/// <param name="How">What it does and what it did: <c>is dark, was lit</c>.</param>
public sealed record Change(string Who, string How)
{
    /// <summary>How many wires are named before the rest is counted.</summary>
    private const int WiresNamed = 4;

    /// <summary>Everything seen first, then what a meter would show. Empty when no mistake is in.</summary>
    public static IReadOnlyList<Change> All(Shown view) => view.Healthy is null ? [] :
    [
        .. Sights(view),
        .. view.Now.Fuses.SelectMany(f => Differs(f.Part, Words.Of(f.State), view.Before(f) is { } was ? Words.Of(was.State) : null)),
        .. view.Now.Relays.SelectMany(r => Differs(r.Part, Says.Word(r), view.Before(r) is { } was ? Says.Word(was) : null)),
        .. view.Now.Controllers.SelectMany(box => Box(box, view.Before(box))),
        .. Wires(view),
        .. Events(view),
    ];

    private static IEnumerable<Change> Sights(Shown view) => view.Now.Seen.SelectMany(seen =>
    {
        var was = view.Before(seen);
        return Differs(Words.Name(seen.Name), Words.Of(seen.Symbol), was is null ? null : Words.Of(was.Symbol));
    });

    private static IEnumerable<Change> Box(ControllerSeen now, ControllerSeen? was)
    {
        if (was is null)
        {
            return [];
        }

        var awake = Differs(now.Part, now.Awake ? "awake" : "asleep", was.Awake ? "awake" : "asleep");
        var lights = now.Lights
            .Select(light => (light.Terminal, Now: Words.OfLight(light.Symbol), Was: was.Lights.FirstOrDefault(l => l.Terminal == light.Terminal)))
            .Where(l => l.Was is not null && l.Now != Words.OfLight(l.Was.Symbol))
            .GroupBy(l => (l.Now, Was: Words.OfLight(l.Was!.Symbol)), l => l.Terminal)
            .Select(g => g.Count() == 1
                ? new Change($"{now.Part} light at {g.First()}", Verb(g.Key.Now, g.Key.Was))
                : new Change($"{now.Part} lights at {string.Join(", ", g)}", $"are {Says.Being(g.Key.Now)}, were {Says.Being(g.Key.Was)}"));
        return [.. awake, .. lights];
    }

    private static IEnumerable<Change> Wires(Shown view)
    {
        var changed = view.Loom.Wires
            .Select(w => (w.Name, Now: view.Of(w.Name), Was: view.Before(w.Name)))
            .Where(w => w.Now is not null && w.Was is not null && Flow.Text(w.Now.Current) != Flow.Text(w.Was.Current))
            .OrderByDescending(w => Math.Abs(w.Now!.Current.Amps - w.Was!.Current.Amps))
            .ToList();
        var named = changed.Take(WiresNamed).Select(w => new Change(w.Name, $"carries {Flow.Unbroken(w.Now!.Current)}, was {Flow.Unbroken(w.Was!.Current)}"));
        return changed.Count > WiresNamed
            ? named.Append(new Change("More wires", string.Create(CultureInfo.InvariantCulture, $"carry other amps: {changed.Count - WiresNamed} besides these")))
            : named;
    }

    private static IEnumerable<Change> Events(Shown view) =>
        view.Now.Events.Except(view.Healthy!.Events, StringComparer.Ordinal).Select(e => new Change("On the way:", e));

    private static IEnumerable<Change> Differs(string who, string now, string? was) =>
        was is null || was == now ? [] : [new Change(who, Verb(now, was))];

    private static string Verb(string now, string was) =>
        now is "sounds" or "turns" or "works" || now.StartsWith("flashes", StringComparison.Ordinal) ? $"{now}, was {Says.Being(was)}" : $"is {Says.Being(now)}, was {Says.Being(was)}";
}

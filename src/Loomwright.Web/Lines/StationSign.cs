using Loomwright.Drawing;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;
using Loomwright.Web.Try;

namespace Loomwright.Web.Lines;

/// <summary>Which symbol stands for a station in the state it is in.</summary>
internal static class StationSign
{
    public static string Of(Station station, Shown view, Seen seen) => station.Model switch
    {
        { Supply: not null } => "battery",
        { Controller: not null } => Output(station, view),
        { Sights.IsEmpty: false } => Says.Picture(seen.Symbol),
        { Protectors.IsEmpty: false } => $"fuse-{State(station, view).ToString().ToLowerInvariant()}",
        _ when station.Through?.Gate is { } gate => Closed(gate, station, view) ? "switch-closed" : "switch-open",
        { Terminals.Length: 1 } => "point",
        _ => "part",
    };

    private static FuseState State(Station station, Shown view) =>
        view.Now.Fuses.FirstOrDefault(f => Names.Same(f.Part, station.Part.Name))?.State ?? FuseState.Whole;

    private static string Output(Station station, Shown view)
    {
        var box = view.Now.Controllers.FirstOrDefault(c => Names.Same(c.Part, station.Part.Name));
        return box?.Outputs.FirstOrDefault(o => Names.Same(o.Terminal, station.Out.Terminal))?.State switch
        {
            OutputState.On => "output-on",
            OutputState.Blinking when view.FlashOn => "output-on",
            OutputState.Tripped => "output-tripped",
            _ => "output-off",
        };
    }

    private static bool Closed(Gate? gate, Station station, Shown view) => gate switch
    {
        Gate.ByControl by => view.Now.Controls.FirstOrDefault(c => Names.Same(c.Control, by.Control)) is { } control && by.ClosedIn.Any(p => Names.Same(p, control.Position)),
        Gate.ByRelay by => view.Now.Relays.FirstOrDefault(r => Names.Same(r.Part, station.Part.Name))?.PulledIn == by.WhenPulledIn,
        Gate.ByFlasher => !view.Blinks || view.FlashOn,
        Gate.Both both => Closed(both.One, station, view) && Closed(both.Other, station, view),
        _ => true,
    };
}

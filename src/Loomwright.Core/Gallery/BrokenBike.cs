using System.Collections.Immutable;
using Loomwright.Simulation;

namespace Loomwright.Gallery;

/// <summary>A broken bike to learn on: an example with one mistake in it, the symptom it shows, and where to see that.</summary>
/// <param name="Bike">Name of the example's folder and file.</param>
/// <param name="Fault">Text id of the mistake; hidden until somebody asks.</param>
/// <param name="Do">Which control goes to which position, in this order, to see the symptom.</param>
/// <param name="Sight">The lamp, horn, motor or load that shows it best.</param>
/// <param name="Shows">What that then does.</param>
/// <param name="Symptom">What somebody would say of it, in a sentence.</param>
public sealed record BrokenBike(string Bike, string Fault, ImmutableArray<(string Control, string Position)> Do, string Sight, Symbol Shows, string Symptom)
{
    /// <summary>The example's path in a folder of examples.</summary>
    public string Path => $"{Bike}/{Bike}.loom.yaml";

    /// <summary>All of them; each symptom is held against the simulation.</summary>
    public static ImmutableArray<BrokenBike> All { get; } =
    [
        new("kittiwake-bench", "moved: stop lamp feed end box.X4 to box.X5", [("lock", "riding"), ("front brake", "pressed")], "rear cluster.stop", Symbol.Dark, "With the brake pulled the stop lamp stays dark, though the light beside its output is on."),
        new("kittiwake", "open: stop", [("lock", "riding"), ("front brake", "pulled")], "rear cluster.stop", Symbol.Dark, "The stop lamp stays dark from either brake; tail and plate are lit."),
        new("kittiwake", "open: rear cluster ground", [("lock", "riding"), ("front brake", "pulled")], "rear cluster.tail", Symbol.Dark, "Tail, stop and plate are dark together; everything in front works."),
        new("kittiwake", "moved: stop end tail plug.4a to tail plug.5a", [("lock", "riding"), ("front brake", "pulled")], "beacon", Symbol.Lit, "The brake lights the beacon and the stop lamp stays dark."),
        new("kittiwake", "swapped: power plug.4a with power plug.5a", [("lock", "riding"), ("thumb right", "pressed"), ("thumb right", "released")], "right front indicator", Symbol.Dark, "No right indicator flashes, and its output has tripped."),
        new("kittiwake", "swapped: box.X3 with box.X4", [("lock", "riding"), ("thumb horn", "pressed")], "starter", Symbol.Turns, "The horn button turns the starter and the horn stays silent."),
        new("kittiwake", "short: power plug.8a to power plug.9a", [("lock", "riding")], "grips", Symbol.Works, "The grips warm as soon as the key is on, whatever their switch says."),
        new("kittiwake", "open: thumb ground", [("lock", "riding"), ("thumb horn", "pressed")], "horn", Symbol.Silent, "Nothing answers to the buttons on the left bar: horn, indicators and start are all dead."),
        new("kittiwake", "stuck: lock at park", [("lock", "riding")], "headlamp.dip", Symbol.Dark, "With the key at riding only the parking lamps are lit; dip and ignition are not."),
        new("kittiwake", "open: lock feed", [("lock", "riding")], "rear cluster.tail", Symbol.Dark, "The key does nothing at all; the box stays asleep."),
        new("kittiwake", "dead: oil tell-tale", [("lock", "riding")], "oil tell-tale", Symbol.Dark, "The oil tell-tale stays dark with the key on and the engine off."),
        new("kittiwake", "reversed: left front indicator", [("lock", "riding"), ("thumb left", "pressed"), ("thumb left", "released")], "left front indicator", Symbol.Dark, "One left indicator is dark; the other flashes at the usual rate."),
        new("kittiwake", "swapped: headlamp.main with headlamp.ground", [("lock", "riding")], "headlamp.dip", Symbol.Dim, "On dip the headlamp glows yellow: both of its filaments are dim."),
        new("kittiwake", "open: engine strap", [("lock", "riding"), ("side stand", "up"), ("thumb start", "pressed")], "starter", Symbol.Rests, "The starter rests, and neutral and oil tell-tales are dark."),
        new("kittiwake", "open: start relay ground", [("lock", "riding"), ("side stand", "up"), ("thumb start", "pressed")], "starter", Symbol.Rests, "The start output's light is on, and the starter rests without a click."),
        new("kittiwake", "leak: lock 30 ohm", [], "headlamp.dip", Symbol.Lit, "With the key off the dip lamp is lit, though the tell-tales only glow."),
        new("kittiwake", "high: battery minus 0.5 ohm", [("lock", "riding"), ("thumb horn", "pressed")], "horn", Symbol.Silent, "At a touch of the horn every lamp goes dark, the horn is silent and the box falls asleep."),
        new("sandpiper", "moved: dip lamp feed end beam relay.87a to beam relay.87", [("lock", "riding"), ("light switch", "head")], "headlamp.dip", Symbol.Dark, "The headlamp is dark on dip, and on main both filaments burn."),
        new("sandpiper", "swapped: rear lamp.tail with rear lamp.stop", [("lock", "riding"), ("light switch", "position")], "rear lamp.stop", Symbol.Lit, "The stop lamp is lit with the position lamps, and the brake adds only a faint light."),
        new("sandpiper", "dead: right rear indicator", [("lock", "riding"), ("turn switch", "right")], "right front indicator", Symbol.FlashingSlowly, "On the right the front indicator flashes slowly, and the rear one is dark."),
        new("sandpiper", "stuck: rear brake at pressed", [("lock", "riding")], "rear lamp.stop", Symbol.Lit, "The stop lamp is lit as soon as the key is on."),
        new("sandpiper", "lost: fork", [("lock", "riding"), ("light switch", "head")], "headlamp.dip", Symbol.Dim, "Headlamp, position lamp and clock lamp are dim together; the rear lamp is bright."),
        new("sandpiper", "moved: horn button lead end horn button.1 to horn button.2", [("lock", "riding")], "horn", Symbol.Sounds, "The horn sounds as soon as the key is on and does not stop."),
        new("sandpiper", "moved: right front indicator feed end right front indicator.feed to right front indicator.body", [("lock", "riding"), ("turn switch", "right")], "turn tell-tale", Symbol.Dark, "The turn switch to the right blows the signal fuse; then the neutral tell-tale is dark too."),
        new("sandpiper", "open: flasher lead", [("lock", "riding"), ("turn switch", "right")], "right rear indicator", Symbol.Dark, "No indicator flashes on either side; the neutral tell-tale is lit."),
        new("sandpiper", "swapped: head relay.86 with head relay.85", [("lock", "riding"), ("light switch", "head")], "headlamp.dip", Symbol.Dark, "Turning the light switch to head blows the signal fuse, and position and tail lamps are dark with it."),
        new("sandpiper", "short: kill switch.feed to kill switch.run", [("lock", "riding"), ("kill switch", "stop"), ("points", "closed")], "coil", Symbol.Works, "The kill switch at stop does not stop the engine: the coil still works."),
    ];
}

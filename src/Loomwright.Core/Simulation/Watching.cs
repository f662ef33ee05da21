using System.Collections.Immutable;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Simulation;

/// <summary>Turns what settled into what a person sees: the frame.</summary>
internal sealed class Watching(Wiring wiring, Settler settler, FullLight fullLight)
{
    // A status light that follows voltage or load current lights above these (judgement, no source): more than an
    // output that is off and unloaded stands at by its leakage, less than the smallest LED draws.
    private const double LightsAboveVolts = 2;
    private const double LightsAboveAmps = 0.01;

    public Frame Frame(Settled settled, TimeSpan time, string step, IEnumerable<string> events) => new()
    {
        Time = time,
        Step = step,
        Outcome = settled.Outcome,
        Controls = [.. wiring.Controls.Select((c, i) => Control(c, settled.State.Positions[i]))],
        Controllers = [.. wiring.Boxes.Select((b, i) => Box(b, settled.State.Boxes[i], settled.Pictures))],
        Relays = [.. wiring.Relays.Select((r, i) => new RelaySeen(r.Part, settled.State.Relays[i])).Where((_, i) => wiring.Relays[i].Facts.Clicks)],
        Seen = Seen(settled),
        Fuses = [.. wiring.Fuses.Select((f, i) => Fuse(f, settled.State.Blown[i], f.Cycle is { } c && settled.State.Flashers[c], settled.Pictures))],
        Phases = [.. settled.Pictures.Select((p, i) => Phase(settled, p, i))],
        Events = [.. events],
    };

    /// <summary>The frame without its electrical pictures: what shows without a meter.</summary>
    public Frame Glance(Settled settled) => new()
    {
        Time = TimeSpan.Zero,
        Step = "",
        Outcome = settled.Outcome,
        Controls = [],
        Controllers = [.. wiring.Boxes.Select((b, i) => Box(b, settled.State.Boxes[i], settled.Pictures))],
        Seen = Seen(settled),
        Fuses = [.. wiring.Fuses.Select((f, i) => Fuse(f, settled.State.Blown[i], f.Cycle is { } c && settled.State.Flashers[c], settled.Pictures))],
        Phases = [],
        Events = [],
    };

    /// <summary>What a person sees and hears of what settled.</summary>
    public ImmutableArray<Seen> Seen(Settled settled) =>
        settled.Pictures.IsEmpty ? [] : [.. wiring.Sights.Select((s, i) => Sight(s, settled.Pictures, settled.FlashesPerMinute.IsEmpty ? null : settled.FlashesPerMinute[i]))];

    private static ControlSeen Control(Control control, int position)
    {
        var name = control.Positions[position];
        return new ControlSeen(control.Name, name, Text.Names.Same(name, control.Rest));
    }

    private static ControllerSeen Box(Box box, BoxState state, ImmutableArray<Picture> pictures) => new(
        box.Part,
        state.Awake,
        [.. box.Facts.Outputs.Where((_, o) => box.Rules.Remembers(state.Memory, o + 1)).Select(o => o.Name)],
        [.. box.Facts.Inputs.Select((input, i) => new InputSeen(input.Name, input.Terminal, state.Inputs[i]))],
        [.. box.Facts.Outputs.Select((output, o) => new OutputSeen(output.Name, output.Terminal, OutputState(state, o), Amps(pictures, box.OutputLinks[o])) { LampOut = !pictures.IsEmpty && LampOut(box, state, o, pictures[0]) })],
        [.. box.Lights.Select(light => new StatusSeen(light.Terminal, Light(box, light, state, pictures)))]);

    private static OutputState OutputState(BoxState state, int output) =>
        state.Tripped[output] ? Simulation.OutputState.Tripped
        : !state.Commands[output].On ? Simulation.OutputState.Off
        : state.Commands[output].Blinks ? Simulation.OutputState.Blinking
        : Simulation.OutputState.On;

    private static Current Amps(ImmutableArray<Picture> pictures, int link) => new(pictures.IsEmpty || link < 0 ? 0 : pictures[0].Amps[link]);

    /// <summary>What a small light beside a terminal does.</summary>
    internal static Symbol Light(Box box, LightPlace light, BoxState state, ImmutableArray<Picture> pictures)
    {
        if (!state.Awake || pictures.IsEmpty)
        {
            return Symbol.Dark;
        }

        var on = Lights(0);
        var between = pictures.Length > 1 ? Lights(1) : on;
        return on != between ? Symbol.Flashing : on ? Symbol.Lit : Symbol.Dark;

        bool Lights(int phase) => light.Means switch
        {
            LightMeans.Input => light.Place >= 0 && state.Inputs[light.Place],
            LightMeans.Command => light.Place >= 0 && (phase == 0 ? state.Drive(light.Place).Share : state.Drive(light.Place).ShareBetween) > 0,
            LightMeans.Voltage => Math.Abs(pictures[phase].Volts[light.Node] - pictures[phase].Volts[box.GroundNode]) > LightsAboveVolts,
            LightMeans.LoadCurrent => light.Place >= 0 && box.OutputLinks[light.Place] is >= 0 and var link && Math.Abs(pictures[phase].Amps[link]) > LightsAboveAmps,
            LightMeans.Trouble => light.Place >= 0 && (state.Tripped[light.Place] || LampOut(box, state, light.Place, pictures[0])),
            _ => false,
        };
    }

    /// <summary>Whether an output that looks for it is on and finds too little current in its flash.</summary>
    internal static bool LampOut(Box box, BoxState state, int output, Picture on) =>
        state.Drive(output).On && box.OutputLinks[output] is >= 0 and var link && Math.Abs(on.Amps[link]) < box.Facts.Outputs[output].LampOutBelowAmps;

    private Seen Sight(SightPlace sight, ImmutableArray<Picture> pictures, double? perMinute)
    {
        var on = pictures[0];
        var share = Share(sight, on);
        var symbol = Called(sight, pictures, perMinute);
        return new Seen(sight.Name, sight.Part, symbol, share, new Voltage(on.Across(wiring.Links[sight.Link])), new Current(on.Amps[sight.Link]))
        {
            FlashesPerMinute = symbol is Symbol.Flashing or Symbol.FlashingFast or Symbol.FlashingSlowly ? perMinute : null,
        };
    }

    /// <summary>What a person would say of one thing to see or hear.</summary>
    internal Symbol Called(SightPlace sight, ImmutableArray<Picture> pictures, double? perMinute)
    {
        var (on, between) = (pictures[0], pictures[^1]);
        var amps = Math.Max(Math.Abs(on.Amps[sight.Link]), Math.Abs(between.Amps[sight.Link]));
        return sight.Sight switch
        {
            Sight.Horn horn => amps >= horn.SoundsAboveAmps ? Symbol.Sounds : Symbol.Silent,
            Sight.Motor motor => amps >= motor.TurnsAboveAmps ? Symbol.Turns : Symbol.Rests,
            Sight.Load load => amps >= load.WorksAboveAmps ? Symbol.Works : Symbol.Rests,
            _ => Simulation.Light.Called(Share(sight, on) ?? 0, Share(sight, between) ?? 0, perMinute),
        };
    }

    /// <summary>Share of its full light that a lamp gives, where it blinks in the darker phase; 0 for what gives none.</summary>
    internal double Light(SightPlace sight, ImmutableArray<Picture> pictures) => Math.Min(Share(sight, pictures[0]) ?? 0, Share(sight, pictures[^1]) ?? 0);

    /// <summary>How a fuse is found.</summary>
    internal static FuseState State(FusePlace fuse, bool blown, bool cycles, double amps) =>
        blown ? FuseState.Blown : cycles ? FuseState.Cycling : Math.Abs(amps) > fuse.RatingAmps ? FuseState.Overloaded : FuseState.Whole;

    // A burnt filament has all the volts across it and gives no light.
    private double? Share(SightPlace sight, Picture picture) =>
        sight.Sight is Sight.Lamp && wiring.Links[sight.Link].Curve == Ohms.OpenContact ? 0 : fullLight.Share(sight, picture);

    private static FuseSeen Fuse(FusePlace fuse, bool blown, bool cycles, ImmutableArray<Picture> pictures)
    {
        var amps = Amps(pictures, fuse.Link);
        return new FuseSeen(fuse.Part, State(fuse, blown, cycles, amps.Amps), amps, new Current(fuse.RatingAmps));
    }

    private Phase Phase(Settled settled, Picture picture, int place)
    {
        var floating = settler.Floating(settled.State, between: place > 0);
        return new Phase(
            [.. wiring.Points.Select(p => new PotentialSeen(p.Terminal, new Voltage(picture.Volts[p.Node]), floating is not null && floating[p.Node]))],
            [.. wiring.Links.Select((link, l) => (link, l)).Where(x => x.link.IsWire).Select(x => new WireSeen(x.link.Owner, new Current(picture.Amps[x.l]), new Voltage(picture.Across(x.link))))],
            new Current(wiring.Supplies.Sum(s => -picture.Amps[s])),
            picture.ResidualAmps);
    }
}

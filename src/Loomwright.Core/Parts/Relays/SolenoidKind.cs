using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>The solenoid of a pre-engaged starter, with its two windings (docs/models/solenoid.md).</summary>
internal static class SolenoidKind
{
    private const double RatedVolts = 12;

    // Of the ampere-turns both windings give at 12 V (judgement, no source): 7 V still pull it in, 2 V on the hold winding no longer hold it.
    private const double PullInShare = 0.58;
    private const double DropOutShare = 0.17;

    private static readonly Amount Pull = new("pull current", "What its pull winding takes at 12 V, through the motor to ground.", Unit.Amp, 5, 100, 30);
    private static readonly Amount Hold = new("hold current", "What its hold winding takes at 12 V.", Unit.Amp, 1, 30, 8);
    private static readonly Amount Heavy = new("contact", "Resistance of its closed contact; a worn one has more.", Unit.Ohm, 0.00001, 10, 0.0005);
    private static readonly Parameter Marked = new("terminals", "The marks of battery, motor, control and ground, in this order. Default 30, 45, 50 and 31; the last is body when it is mounted.", new Form.Names());

    public static Kind Kind { get; } = Mount.Able(new(
        "solenoid", "The solenoid of a pre-engaged starter: it shifts the pinion and closes the starter current.", [Pull.Parameter, Hold.Parameter, Heavy.Parameter, Marked], Build));

    // Both windings have the same turns, so their currents add: when control goes off, the contact feeds them in a row,
    // one against the other, and it lets go.
    private static Model Build(Part part)
    {
        var settings = part.Settings;
        var marks = Marks.Of(settings, Marked.Key, ["30", "45", "50", Mount.IsIn(settings) ? Mount.Case : "31"]);
        var (battery, motor, control, ground) = (marks.Known[0], marks.Known[1], marks.Known[2], marks.Known[3]);
        var (pullAmps, holdAmps) = (Pull.Of(settings), Hold.Of(settings));
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements =
            [
                new Element("pull winding", control, motor, new Ohms(RatedVolts / pullAmps)),
                new Element("hold winding", control, ground, new Ohms(RatedVolts / holdAmps)),
                new Element("contact", battery, motor, new Ohms(Heavy.Of(settings))) { Gate = new Gate.ByRelay("solenoid", WhenPulledIn: true) },
            ],
            Relays = [new Relay("solenoid", ["pull winding", "hold winding"], PullInShare * (pullAmps + holdAmps), DropOutShare * holdAmps)],
            Problems = marks.Problems,
        };
    }
}

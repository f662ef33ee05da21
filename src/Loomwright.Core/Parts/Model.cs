using System.Collections.Immutable;
using Loomwright.Expressions;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>What a part is to the simulation: terminals, elements between them, controls, and what a person sees. Plain data.</summary>
public sealed record Model
{
    /// <summary>In the order they stand on the case; neighbours here are neighbours there within one plug. A part that is one point has one terminal with an empty mark.</summary>
    public required ImmutableArray<Terminal> Terminals { get; init; }

    /// <summary>What lies between the terminals. Ends not among <see cref="Terminals"/> are points inside the part.</summary>
    public ImmutableArray<Element> Elements { get; init; } = [];

    /// <summary>What a hand can operate.</summary>
    public ImmutableArray<Control> Controls { get; init; } = [];

    /// <summary>What an eye or ear can tell.</summary>
    public ImmutableArray<Sight> Sights { get; init; } = [];

    /// <summary>Fuses inside this part.</summary>
    public ImmutableArray<Protector> Protectors { get; init; } = [];

    /// <summary>Coils that move contacts inside this part.</summary>
    public ImmutableArray<Relay> Relays { get; init; } = [];

    /// <summary>What goes on and off by itself inside this part.</summary>
    public ImmutableArray<Flasher> Flashers { get; init; } = [];

    /// <summary>Where its metal sits on the metal of another part.</summary>
    public ImmutableArray<Joint> Joints { get; init; } = [];

    /// <summary>Elements that charge the bike beside its supply.</summary>
    public ImmutableArray<string> Charging { get; init; } = [];

    /// <summary>Set for a button block with electronics.</summary>
    public ButtonBlock? Block { get; init; }

    /// <summary>Set for a battery or a bench supply.</summary>
    public Supply? Supply { get; init; }

    /// <summary>Set for a load controller.</summary>
    public Controller? Controller { get; init; }

    /// <summary>Set when exchanging its plus and minus matters: the two terminals.</summary>
    public (string Plus, string Minus)? Polarity { get; init; }

    /// <summary>What the settings said that could not be used.</summary>
    public ImmutableArray<Problem> Problems { get; init; } = [];

    /// <summary>How it is easily set, chosen or kept otherwise than the design says.</summary>
    public ImmutableArray<WrongSetting> WrongSettings { get; init; } = [];

    /// <summary>The row of the table of priors by which nothing conducts in it, or null for a part that dies like any other.</summary>
    public string? DeadBy { get; init; }

    /// <summary>Its leads carry no marks and were told apart with a meter.</summary>
    public bool Unmarked { get; init; }

    /// <summary>What can die alone inside it, by its name: a light of several by its own, an output by its terminal.</summary>
    public IEnumerable<string> Inside => [.. Sights.Where(s => s.Name.Length > 0).Select(s => s.Name), .. Controller?.Outputs.Select(o => o.Terminal) ?? []];

    /// <summary>The element that is dead when that is; null when nothing in it is called so.</summary>
    public string? ElementOf(string inside) =>
        Sights.FirstOrDefault(s => s.Name.Length > 0 && Names.Same(s.Name, inside))?.Element ?? Controller?.Outputs.FirstOrDefault(o => Names.Same(o.Terminal, inside))?.Element;
}

/// <summary>A setting that is easily something else.</summary>
/// <param name="Key">As a fault's text names it: <c>rests</c>, <c>outputs/dip/limit</c>.</param>
/// <param name="Value">What it then is, as the file would have it.</param>
/// <param name="Cause">The row of the table of priors it comes about by.</param>
public sealed record WrongSetting(string Key, string Value, string Cause)
{
    public const string Low = "battery low";
    public const string Sense = "switch sense wrong";
    public const string Set = "wrong setting";
    public const string Chosen = "wrong part";
}

/// <summary>What a terminal is for.</summary>
public enum Role
{
    Lead,
    Plus,
    Minus,
    Input,
    Output,
}

/// <summary>One terminal.</summary>
/// <param name="Mark">As printed on the case or the lead's name.</param>
/// <param name="Role">What it is for.</param>
/// <param name="Name">The owner's name for what goes there (<c>stop lamp</c>), or null.</param>
/// <param name="Plug">The plug it sits in, or null.</param>
public sealed record Terminal(string Mark, Role Role, string? Name = null, string? Plug = null);

/// <summary>One two-ended element. Current is positive from <paramref name="From"/> to <paramref name="To"/>.</summary>
/// <param name="Name">Unique inside the part.</param>
/// <param name="Curve">Its current at a voltage, warm.</param>
public sealed record Element(string Name, string From, string To, Curve Curve)
{
    /// <summary>When it conducts at all; null: always.</summary>
    public Gate? Gate { get; init; }

    /// <summary>Its curve while it is shut off: an open contact (1 nS) unless it leaks.</summary>
    public Curve Off { get; init; } = Ohms.OpenContact;

    /// <summary>Its curve in the first milliseconds after switching on; null: the same.</summary>
    public Curve? Cold { get; init; }
}

/// <summary>What decides whether an element conducts.</summary>
public abstract record Gate
{
    private Gate()
    {
    }

    /// <summary>A contact closed in some positions of a control.</summary>
    public sealed record ByControl(string Control, ImmutableArray<string> ClosedIn) : Gate
    {
        public bool Equals(ByControl? other) => other is not null && Control == other.Control && ClosedIn.SequenceEqual(other.ClosedIn);

        public override int GetHashCode() => Control.GetHashCode(StringComparison.Ordinal);
    }

    /// <summary>Closed while the controller commands that output (in the on-phase when it blinks).</summary>
    public sealed record ByOutput(string Output) : Gate;

    /// <summary>Conducts while the controller is awake.</summary>
    public sealed record WhileAwake : Gate;

    /// <summary>A contact that a coil closes when it pulls in, or when it lets go.</summary>
    public sealed record ByRelay(string Relay, bool WhenPulledIn) : Gate;

    /// <summary>A contact that opens between the flashes of a flasher.</summary>
    public sealed record ByFlasher(string Flasher) : Gate;

    /// <summary>Closed while both are.</summary>
    public sealed record Both(Gate One, Gate Other) : Gate;
}

/// <summary>Something a hand operates.</summary>
/// <param name="Name">The part's name where a part has one control. Parts that name the same control are moved together.</param>
/// <param name="Positions">In the order they are reached.</param>
/// <param name="Rest">Where it is when nobody has touched it.</param>
/// <param name="Momentary">Springs back when let go.</param>
public sealed record Control(string Name, ImmutableArray<string> Positions, string Rest, bool Momentary);

/// <summary>Something a person can tell of a part.</summary>
/// <param name="Name">Its name after the part's: the element's name, or empty when the part has one.</param>
/// <param name="Element">The element it comes from.</param>
public abstract record Sight(string Name, string Element)
{
    /// <summary>Light from an element: relative light is (watts-wise) the law of <paramref name="Law"/>.</summary>
    public sealed record Lamp(string Name, string Element, LightLaw Law) : Sight(Name, Element);

    /// <summary>Sound from an element at or above a share of its rated current.</summary>
    public sealed record Horn(string Name, string Element, double SoundsAboveAmps) : Sight(Name, Element);

    /// <summary>A shaft that turns at or above a share of its rated current.</summary>
    public sealed record Motor(string Name, string Element, double TurnsAboveAmps) : Sight(Name, Element);

    /// <summary>Anything else that can be told to work, by spark, warmth or what is plugged in, at or above a share of its rated current.</summary>
    public sealed record Load(string Name, string Element, double WorksAboveAmps) : Sight(Name, Element);
}

/// <summary>How light follows the electricity.</summary>
public enum LightLaw
{
    /// <summary>∝ V^3.4, at a share s of the time the filament sees V·√s.</summary>
    Filament,

    /// <summary>∝ forward current, × the share of the time.</summary>
    Led,
}

/// <summary>A fuse element: opens for good, unless it is a breaker's.</summary>
/// <param name="Element">The element it is.</param>
/// <param name="RatingAmps">Printed rating.</param>
public sealed record Protector(string Element, double RatingAmps)
{
    /// <summary>How long it stands how much. A breaker is taken as a blade fuse (judgement).</summary>
    public FuseBand Band { get; init; } = FuseBand.Blade;

    /// <summary>The control that closes it again when pressed, or null.</summary>
    public string? ClosesBy { get; init; }

    /// <summary>It opens and closes as a flasher does; nothing opens it for good.</summary>
    public bool ClosesByItself { get; init; }
}

/// <summary>A coil, or two on one core, that moves contacts.</summary>
/// <param name="Name">Unique inside the part.</param>
/// <param name="Coils">The elements that are its windings; their currents add up, from → to positive.</param>
/// <param name="PullInAmps">From this current up it pulls in …</param>
/// <param name="DropOutAmps">… and at this one and below it lets go.</param>
public sealed record Relay(string Name, ImmutableArray<string> Coils, double PullInAmps, double DropOutAmps)
{
    /// <summary>How it stands while its coil has current enough …</summary>
    public const string PulledIn = "pulled in";

    /// <summary>… and while it has not.</summary>
    public const string Released = "released";

    /// <summary>False for electronics that only live while they are fed, the right way round, and make no click.</summary>
    public bool Clicks { get; init; } = true;
}

/// <summary>Metal that sits on the metal of a part that is one point: a bolt, a bracket, a bearing.</summary>
/// <param name="Terminal">The terminal of this part that it joins.</param>
/// <param name="Part">The part it sits on, in the owner's words.</param>
public sealed record Joint(string Terminal, string Part, Curve Curve);

/// <summary>A source that feeds the bike.</summary>
/// <param name="Plus">Its plus terminal.</param>
/// <param name="Minus">Its minus terminal: the bike's reference point.</param>
/// <param name="Element">The element it is.</param>
/// <param name="LimitAmps">Where a bench supply stops giving more, or null.</param>
public sealed record Supply(string Plus, string Minus, string Element, double? LimitAmps);

/// <summary>Something in the settings that cannot be used: where, what, and the cure.</summary>
/// <param name="Path">The keys down to it, <c>outputs/stop lamp/when</c>.</param>
/// <param name="What">What is wrong, with the owner's names.</param>
/// <param name="Cure">What to write instead.</param>
public sealed record Problem(string Path, string What, string Cure);

/// <summary>A load controller as its manual describes it.</summary>
public sealed record Controller
{
    public required string Supply { get; init; }

    public required string Ground { get; init; }

    /// <summary>Where it hears a button block, or null.</summary>
    public DataInput? Data { get; init; }

    /// <summary>What its lights do when power is connected, in the manual's words, or null. Told, never checked by.</summary>
    public string? PowerUpShow { get; init; }

    /// <summary>Over the names of its inputs; asleep, every output is off and nothing is remembered.</summary>
    public required Expression Awake { get; init; }

    /// <summary>Below this supply voltage it loses its memory and starts anew. Default 7.5 V (judgement).</summary>
    public double ResetsBelowVolts { get; init; } = 7.5;

    /// <summary>Sum of all outputs' currents it carries, or null.</summary>
    public double? TotalLimitAmps { get; init; }

    public TimeSpan TotalTripsAfter { get; init; } = TimeSpan.FromMilliseconds(200);

    /// <summary>Blinks a minute of a blinking output. Default 85 (mid of the usual 60…120).</summary>
    public double BlinksPerMinute { get; init; } = 85;

    public ImmutableArray<Input> Inputs { get; init; } = [];

    public ImmutableArray<Output> Outputs { get; init; } = [];

    public ImmutableArray<StatusLight> Lights { get; init; } = [];
}

/// <summary>An input of a controller.</summary>
/// <param name="ActiveAtGround">True: active when pulled below <paramref name="LowVolts"/>; false: active above <paramref name="HighVolts"/>. Between the two it is undefined.</param>
public sealed record Input(string Name, string Terminal, bool ActiveAtGround, double LowVolts, double HighVolts)
{
    /// <summary>Set for a button of a block: it sits on the data terminal and has no volts of its own.</summary>
    public DataButton? Button { get; init; }
}

/// <summary>An output of a controller.</summary>
/// <param name="When">Over the names of the controller's inputs.</param>
/// <param name="Element">The element that carries its load current.</param>
/// <param name="LimitAmps">Where it trips, or null.</param>
/// <param name="TripsAfter">How long it stands more than its limit.</param>
/// <param name="TripEnds">The input whose going off ends the trip, or null: it ends when its own command does.</param>
public sealed record Output(string Name, string Terminal, Expression When, string Element, double? LimitAmps, TimeSpan TripsAfter, string? TripEnds)
{
    /// <summary>On with less current than this a lamp is taken to be out; null: it does not look.</summary>
    public double? LampOutBelowAmps { get; init; }

    /// <summary>Blinks twice as fast while a lamp is out.</summary>
    public bool HurriesOnLampOut { get; init; }
}

/// <summary>The small light beside a terminal.</summary>
public sealed record StatusLight(string Terminal, LightMeans Means);

/// <summary>What a status light follows.</summary>
public enum LightMeans
{
    /// <summary>The input is read as active.</summary>
    Input,

    /// <summary>The output is commanded, whatever is connected.</summary>
    Command,

    /// <summary>There is voltage at the terminal.</summary>
    Voltage,

    /// <summary>Current flows to the load.</summary>
    LoadCurrent,

    /// <summary>The output has tripped, or its lamp is out.</summary>
    Trouble,
}

namespace Loomwright.Long.Outfit;

/// <summary>The right half of the outfit: the chair and its own box. What the rider does reaches it over the plug at the arm.</summary>
internal static class Chair
{
    private const string Riding = "lock is riding";

    private static readonly string[] Nose = ["nose plug"];
    private static readonly string[] Boot = ["boot plug"];
    private static readonly string[] Cabin = ["cabin plug"];

    private static readonly Output[] Outputs =
    [
        new("chair right lamps", "blinking latching(right and key; until right, left, 45 s)", Bike.Latched("right", "left"), "flashing", 0.75, "GN/WH",
            ["chair front indicator", "chair rear indicator"],
            [new("chair front indicator.+", Nose), new("chair rear indicator.+", Boot)]),
        new("chair position lamps", "key", Riding, "lit", 0.75, "GY",
            ["chair position lamp", "nose marker", "boot marker"],
            [new("chair position lamp.+", Nose), new("nose marker.+", Nose), new("boot marker.+", Boot)]),
        new("chair tail lamps", "key", Riding, "lit", 0.75, "GY/BK",
            ["chair cluster.tail", "boot lamp"],
            [new("chair cluster.tail", Boot), new("boot lamp.+", Boot)]),
        new("chair stop lamp", "key and (front brake or rear brake)", $"{Riding} and (front brake or rear brake)", "lit", 0.75, "GN/OG",
            ["chair cluster.stop"],
            [new("chair cluster.stop", Boot)]),
        new("search lamp feed", "key and search", $"{Riding} and search switch", "lit", 1.5, "YE/BK",
            ["search lamp"],
            [new("search lamp.+", Nose)]),
        new("foot lamps", "key and foot", $"{Riding} and foot switch", "lit", 0.75, "WH/BK",
            ["left foot lamp", "right foot lamp", "map lamp"],
            [new("left foot lamp.+", Cabin), new("right foot lamp.+", Cabin), new("map lamp.+", Cabin)]),
        new("chair sockets", "key", Riding, "works", 1, "RD/YE",
            ["chair socket", "boot socket"],
            [new("chair socket.+", Cabin), new("boot socket.+", Boot)]),
        new("heater fan feed", "key and heat", $"{Riding} and heat switch", "turns", 1.5, "BU/RD",
            ["heater fan"],
            [new("heater fan.+", Nose)]),
        new("bilge pump feed", "key and bilge", $"{Riding} and bilge switch", "turns", 1, "BU/GN",
            ["bilge pump"],
            [new("bilge pump.+", Boot)]),
        new("warm seat feed", "(key and warm seat) at 70 %", $"{Riding} and warm seat switch", "works", 1, "PK/BK",
            ["warm seat"],
            [new("warm seat.+", Cabin)]),
        new("radio feed", "key", Riding, "works", 0.75, "VT",
            ["radio"],
            [new("radio.+", Cabin)]),
        new("beacon feed", "blinking latching(call and key; until call)", $"latching(call and {Riding}; until call, lock is off)", "flashing", 0.75, "OG/BU",
            ["beacon"],
            [new("beacon.+", Boot)]),
    ];

    // What the rider moves is joined to the chair's box at the terminal of the bike's box: one switch, two boxes that look at it.
    private static readonly (string Input, string Terminal)[] FromTheBike =
        [("left", "bike box.Y3"), ("right", "bike box.Y4"), ("front brake", "bike box.Y7"), ("rear brake", "bike box.Y12")];

    private static readonly string[] Switches = ["search", "foot", "heat", "bilge", "warm seat"];

    public static void Hands(Sheet sheet)
    {
        sheet.Heading("what hands move in the chair");
        foreach (var name in Switches)
        {
            sheet.Block($"{name} switch", "switch", "chair", "    terminals: [1, 2]\n    positions:\n      \"off\": []\n      \"on\": [[1, 2]]\n");
        }

        sheet.Part("call", "button", "chair");
    }

    public static void Loads(Sheet sheet)
    {
        sheet.Heading("the chair's box and what hangs on it");
        sheet.Part("chair bar", "ground stud", "chair");
        sheet.Part("boot stud", "ground stud", "boot");
        sheet.Part("nose stud", "ground stud", "nose");
        sheet.Part("chair frame", "ground body", "arm", "body: frame");
        sheet.Block("chair box", "load controller", "chair", Output.Box("key", ["key"], [.. FromTheBike.Select(f => f.Input), .. Switches, "call"], Outputs));
        sheet.Lead("chair box supply", "chair breaker.2", "chair box.B+", 6, "RD", "arm plug");
        sheet.Lead("chair box ground", "chair box.B-", "chair bar", 4, "BK");
        sheet.Lead("chair ground lead", "chair bar", "ground bar", 6, "BK", "arm plug");
        sheet.Lead("second chair ground lead", "chair bar", "ground bar", 6, "BK", "arm plug");
        sheet.Lead("chair frame lead", "chair frame", "ground bar", 6, "BK");
        sheet.Lead("boot ground lead", "boot stud", "chair bar", 2.5, "BN", Boot);
        sheet.Lead("nose ground lead", "nose stud", "chair bar", 4, "BN", Nose);
        sheet.Lead("chair box key", "key splice", "chair box.Y1", 0.5, "OG/WH", "arm plug");
        for (var i = 0; i < FromTheBike.Length; i++)
        {
            sheet.Lead($"chair {FromTheBike[i].Input} signal", FromTheBike[i].Terminal, FormattableString.Invariant($"chair box.Y{i + 2}"), 0.5, "GN/RD", "arm plug");
        }

        for (var i = 0; i <= Switches.Length; i++)
        {
            var part = i < Switches.Length ? $"{Switches[i]} switch" : "call";
            sheet.Lead($"{part} signal", $"{part}.1", FormattableString.Invariant($"chair box.Y{FromTheBike.Length + i + 2}"), 0.5, "VT/BK", Cabin);
            sheet.Lead($"{part} ground", $"{part}.2", "chair bar", 0.5, "BN", Cabin);
        }

        sheet.Block("chair cluster", "lamp", "boot", "    leads: [tail, stop, ground]\n    elements:\n      tail: {category: P21/5W tail}\n      stop: {category: P21/5W stop}\n");
        sheet.Lead("chair cluster ground", "chair cluster.ground", "boot stud", 1, "BN");
        (string Name, string Kind, string Place, string Settings)[] loads =
        [
            ("chair front indicator", "lamp", "nose", "category: P21W"), ("chair rear indicator", "lamp", "boot", "category: P21W"), ("chair position lamp", "lamp", "nose", "category: T4W"),
            ("nose marker", "lamp", "nose", "led: 0.5 W"), ("boot marker", "lamp", "boot", "led: 0.5 W"), ("boot lamp", "lamp", "boot", "category: C5W"),
            ("search lamp", "lamp", "nose", "category: H3"), ("left foot lamp", "lamp", "chair", "led: 1 W"), ("right foot lamp", "lamp", "chair", "led: 1 W"), ("map lamp", "lamp", "chair", "category: C5W"),
            ("chair socket", "socket", "chair", "takes: 2 A"), ("boot socket", "socket", "boot", "takes: 1 A"), ("heater fan", "fan", "nose", "current: 5 A"),
            ("bilge pump", "fuel pump", "boot", "current: 3 A"), ("warm seat", "load", "chair", "current: 4 A"), ("radio", "load", "chair", "current: 1.5 A"), ("beacon", "lamp", "boot", "led: 12 W, led drive: driver"),
        ];
        foreach (var (name, kind, place, settings) in loads)
        {
            sheet.Part(name, kind, place, settings);
            sheet.Lead($"{name} ground", $"{name}.-", place switch { "boot" => "boot stud", "nose" => "nose stud", _ => "chair bar" }, 1, "BN", place == "chair" ? Cabin : []);
        }

        sheet.Part("fan diode", "diode", "nose");
        sheet.Lead("fan diode cathode", "fan diode.cathode", "heater fan.+", 1, "BU/RD");
        sheet.Lead("fan diode anode", "fan diode.anode", "heater fan.-", 1, "BN");
        for (var o = 0; o < Outputs.Length; o++)
        {
            Outputs[o].Wire(sheet, FormattableString.Invariant($"chair box.X{o + 1}"), "chair");
        }
    }
}

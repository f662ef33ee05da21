namespace Loomwright.Long.Outfit;

/// <summary>The left half of the outfit: battery, engine, handlebar, and the box under the seat.</summary>
internal static class Bike
{
    private const string Riding = "lock is riding";

    private static readonly string[] Front = ["front plug"];
    private static readonly string[] Rear = ["rear plug"];

    private static readonly Output[] Outputs =
    [
        new("left lamps", "blinking latching(left and key; until left, right, 45 s)", Latched("left", "right"), "flashing", 0.75, "BU/WH",
            ["left front indicator", "left rear indicator", "left tell-tale"],
            [new("left front indicator.+", Front), new("left rear indicator.+", Rear), new("left tell-tale.+", Front)]),
        new("right lamps", "blinking latching(right and key; until right, left, 45 s)", Latched("right", "left"), "flashing", 0.75, "GN/WH",
            ["right front indicator", "right tell-tale"],
            [new("right front indicator.+", Front), new("right tell-tale.+", Front)]),
        new("horns", "key and hoot", $"{Riding} and hoot", "sounds", 1.5, "VT/YE",
            ["disc horn", "air horn"],
            [new("disc horn.1", Front), new("horn relay.86", Front)]),
        new("start relay", "key and run and start and (neutral or clutch)", $"{Riding} and kill switch is run and start and (gearbox is neutral or clutch)", "turns", 1, "YE/RD",
            ["starter"],
            [new("start magnet.86", [])]),
        new("dip", "key and not high", $"{Riding} and dip switch is dip", "lit", 1.5, "YE",
            ["headlamp.dip"],
            [new("headlamp.dip", Front)]),
        new("main beam", "key and high", $"{Riding} and dip switch is main", "lit", 1.5, "WH",
            ["headlamp.main", "main tell-tale"],
            [new("headlamp.main", Front), new("main tell-tale.+", Front)]),
        new("tail lamps", "key", Riding, "lit", 0.75, "GY",
            ["rear cluster.tail", "plate lamp", "position lamp", "clock lamp", "rev lamp"],
            [new("rear cluster.tail", Rear), new("plate lamp.+", Rear), new("position lamp.+", Front), new("clock lamp.+", Front), new("rev lamp.+", Front)]),
        new("stop lamp", "key and (front brake or rear brake)", $"{Riding} and (front brake or rear brake)", "lit", 0.75, "GN/OG",
            ["rear cluster.stop"],
            [new("rear cluster.stop", Rear)]),
        new("fog lamps", "key and fog", $"{Riding} and fog switch", "lit", 1, "YE/BK",
            ["left fog lamp", "right fog lamp", "fog tell-tale"],
            [new("left fog lamp.+", Front), new("right fog lamp.+", Front), new("fog tell-tale.+", Front)]),
        new("grips", "(key and warm) at 65 %", $"{Riding} and grip switch", "works", 1, "PK",
            ["grips"],
            [new("grips.+", Front)]),
        new("yoke socket feed", "key", Riding, "works", 1, "RD/YE",
            ["yoke socket"],
            [new("yoke socket.+", Front)]),
        new("fuel pump feed", "key and run", $"{Riding} and kill switch is run", "turns", 1, "BK/WH",
            ["fuel pump"],
            [new("fuel pump.+", [])]),
    ];

    public static string Latched(string one, string other) =>
        $"latching({one} and {Riding}; until {one}, {other}, lock is off, 45 s)";

    public static void Supply(Sheet sheet)
    {
        sheet.Heading("supply, starter, charging");
        sheet.Part("battery", "battery", "tray", "chemistry: agm, capacity: 28 Ah");
        sheet.Part("main fuse", "fuse", "tray", "rating: 40 A");
        sheet.Part("chair breaker", "breaker", "tray", "rating: 40 A, resets: by itself");
        sheet.Part("solenoid fuse", "fuse", "tray", "rating: 40 A");
        sheet.Part("air horn fuse", "fuse", "tray", "rating: 30 A");
        sheet.Part("charge fuse", "fuse", "tray", "rating: 40 A");
        sheet.Part("key fuse", "fuse", "tray", "rating: 5 A");
        sheet.Part("ignition fuse", "fuse", "tray", "rating: 10 A");
        sheet.Part("ground bar", "ground stud", "seat");
        sheet.Part("front ground", "splice", "yoke");
        sheet.Part("tail stud", "ground stud", "tail");
        sheet.Part("engine block", "ground body", "engine", "body: engine");
        sheet.Part("start magnet", "relay", "tray");
        sheet.Part("solenoid", "solenoid", "engine", "mounted on: engine block");
        sheet.Part("starter", "starter", "engine", "mounted on: engine block");
        sheet.Part("alternator", "alternator", "engine", "power: 400 W");
        foreach (var (fuse, behind, size) in new[] { ("main fuse", "battery.+", 6.0), ("chair breaker", "battery.+", 6), ("solenoid fuse", "battery.+", 6), ("air horn fuse", "battery.+", 6), ("charge fuse", "battery.+", 6), ("key fuse", "main fuse.2", 4), ("ignition fuse", "main fuse.2", 4) })
        {
            sheet.Lead($"{fuse} link", behind, $"{fuse}.1", size, "RD");
        }

        sheet.Lead("starter cable", "battery.+", "solenoid.30", 25, "RD");
        sheet.Lead("starter feed", "solenoid.45", "starter.+", 25, "RD");
        sheet.Lead("start relay supply", "solenoid fuse.2", "start magnet.30", 4, "RD/YE");
        sheet.Lead("solenoid feed", "start magnet.87", "solenoid.50", 4, "YE/RD");
        sheet.Lead("start relay ground", "start magnet.85", "ground bar", 1, "BN");
        sheet.Lead("engine strap", "engine block", "battery.-", 25, "BK");
        sheet.Lead("charge plus", "charge fuse.2", "alternator.B+", 6, "RD/WH");
        sheet.Lead("charge minus", "alternator.-", "battery.-", 6, "BK");
        sheet.Lead("battery minus", "ground bar", "battery.-", 10, "BK");
        sheet.Lead("front ground lead", "front ground", "ground bar", 4, "BN", Front);
        sheet.Lead("second front ground lead", "front ground", "ground bar", 4, "BN", Front);
        sheet.Lead("tail ground lead", "tail stud", "ground bar", 2.5, "BN", Rear);
    }

    public static void Hands(Sheet sheet)
    {
        sheet.Heading("what hands and feet move, on the bike");
        sheet.Block("lock", "switch", "yoke", "    terminals: [feed, key]\n    positions:\n      \"off\": []\n      riding: [[feed, key]]\n");
        sheet.Part("key splice", "splice", "seat");
        sheet.Lead("lock feed", "key fuse.2", "lock.feed", 0.5, "RD/BK", Front);
        sheet.Lead("key", "lock.key", "key splice", 0.5, "OG/WH", Front);
        sheet.Part("kill switch", "kill switch", "bars", "stops by: opening");
        sheet.Part("run splice", "splice", "seat");
        sheet.Part("ignition relay", "relay", "seat", "across coil: diode");
        sheet.Lead("ignition relay coil", "key splice", "ignition relay.86", 0.5, "OG");
        sheet.Lead("ignition relay ground", "ignition relay.85", "ground bar", 0.5, "BN");
        sheet.Lead("ignition relay feed", "ignition fuse.2", "ignition relay.30", 1, "RD/GN");
        sheet.Lead("kill feed", "ignition relay.87", "kill switch.1", 1, "BK/GN", Front);
        sheet.Lead("run", "kill switch.2", "run splice", 1, "BK/WH", Front);
        foreach (var coil in new[] { "left coil", "right coil" })
        {
            sheet.Part(coil, "ignition coil", "engine", "current: 1.5 A");
            sheet.Lead($"{coil} feed", "run splice", $"{coil}.15", 1, "BK/WH");
            sheet.Lead($"{coil} ground", $"{coil}.1", "engine block", 1, "BN");
        }

        sheet.Part("injection", "injection unit", "seat");
        sheet.Lead("injection feed", "run splice", "injection.+", 1, "BK/WH");
        sheet.Lead("injection ground", "injection.-", "ground bar", 1, "BN");
        sheet.Function("ignition", $"{Riding} and kill switch is run", "works", "left coil", "right coil", "injection");
        Senders(sheet);
        foreach (var button in new[] { "left", "right", "hoot", "start" })
        {
            sheet.Part(button, "button", "bars");
        }

        sheet.Part("front brake", "sensor switch", "bars", "senses: front brake");
        sheet.Part("clutch", "sensor switch", "bars", "senses: clutch");
        sheet.Part("rear brake", "sensor switch", "engine", "senses: rear brake");
        sheet.Part("gearbox", "sensor switch", "engine", "senses: neutral, mounted on: engine block");
        foreach (var (name, on) in new[] { ("dip switch", "main"), ("fog switch", "\"on\""), ("grip switch", "warm") })
        {
            sheet.Block(name, "switch", "bars", $"    terminals: [1, 2]\n    positions:\n      {(on == "main" ? "dip" : "\"off\"")}: []\n      {on}: [[1, 2]]\n");
        }
    }

    // The gauge is a resistance in a row with the sender; what either shows is not simulated.
    private static void Senders(Sheet sheet)
    {
        sheet.Part("speed sender", "speed sender", "engine", "unused: [signal]");
        sheet.Lead("speed sender feed", "key splice", "speed sender.+", 0.5, "OG");
        sheet.Lead("speed sender ground", "speed sender.-", "ground bar", 0.5, "BN");
        sheet.Part("fuel gauge", "resistor", "yoke", "resistance: 100 ohm");
        sheet.Part("fuel sender", "ohm sender", "seat");
        sheet.Lead("fuel gauge feed", "key splice", "fuel gauge.1", 0.5, "OG", Front);
        sheet.Lead("fuel gauge lead", "fuel gauge.2", "fuel sender.signal", 0.5, "WH/GN", Front);
        sheet.Lead("fuel sender ground", "fuel sender.-", "ground bar", 0.5, "BN");
    }

    public static void Loads(Sheet sheet)
    {
        sheet.Heading("the bike's box and what hangs on it");
        string[] plus = ["key", "run"];
        (string Input, string Switch, string[] Plugs)[] ground =
        [
            ("left", "left", Front), ("right", "right", Front), ("hoot", "hoot", Front), ("start", "start", Front), ("front brake", "front brake", Front), ("clutch", "clutch", Front),
            ("high", "dip switch", Front), ("fog", "fog switch", Front), ("warm", "grip switch", Front), ("rear brake", "rear brake", []), ("neutral", "gearbox", []),
        ];
        sheet.Block("bike box", "load controller", "seat", Output.Box("key", plus, [.. ground.Select(g => g.Input)], Outputs));
        sheet.Lead("bike box supply", "main fuse.2", "bike box.B+", 6, "RD");
        sheet.Lead("bike box ground", "bike box.B-", "ground bar", 4, "BK");
        sheet.Lead("bike box key", "key splice", "bike box.Y1", 0.5, "OG/WH");
        sheet.Lead("bike box run", "run splice", "bike box.Y2", 0.5, "BK/WH");
        for (var i = 0; i < ground.Length; i++)
        {
            var (input, name, plugs) = ground[i];
            var seat = FormattableString.Invariant($"bike box.Y{plus.Length + i + 1}");
            sheet.Lead($"{input} signal", $"{name}.1", seat, 0.5, "GN/RD", plugs);
            if (name != "gearbox")
            {
                sheet.Lead($"{name} ground", $"{name}.2", plugs.Length == 0 ? "ground bar" : "front ground", 0.5, "BN");
            }
        }

        sheet.Block("headlamp", "lamp", "bracket", "    leads: [dip, main, ground]\n    elements:\n      dip: {category: H4 dipped}\n      main: {category: H4 main}\n");
        sheet.Block("rear cluster", "lamp", "tail", "    leads: [tail, stop, ground]\n    elements:\n      tail: {category: P21/5W tail}\n      stop: {category: P21/5W stop}\n");
        (string Name, string Kind, string Place, string Settings)[] loads =
        [
            ("left front indicator", "lamp", "bracket", "category: P21W"), ("right front indicator", "lamp", "bracket", "category: P21W"), ("left rear indicator", "lamp", "tail", "category: P21W"),
            ("left tell-tale", "tell-tale", "yoke", "led: 0.1 W"), ("right tell-tale", "tell-tale", "yoke", "led: 0.1 W"), ("main tell-tale", "tell-tale", "yoke", "led: 0.1 W"), ("fog tell-tale", "tell-tale", "yoke", "led: 0.1 W"),
            ("plate lamp", "lamp", "tail", "category: C5W"), ("position lamp", "lamp", "bracket", "category: T4W"), ("clock lamp", "lamp", "yoke", "category: W2.3W"), ("rev lamp", "lamp", "yoke", "category: W2.3W"),
            ("left fog lamp", "lamp", "bracket", "led: 15 W"), ("right fog lamp", "lamp", "bracket", "led: 15 W"),
            ("grips", "heated grips", "bars", ""), ("yoke socket", "socket", "yoke", "takes: 2 A"), ("fuel pump", "fuel pump", "seat", ""),
        ];
        foreach (var (name, kind, place, settings) in loads)
        {
            sheet.Part(name, kind, place, settings);
            sheet.Lead($"{name} ground", $"{name}.-", place switch { "tail" => "tail stud", "seat" => "ground bar", _ => "front ground" }, 1, "BN");
        }

        sheet.Part("disc horn", "horn", "bracket", "current: 3 A");
        sheet.Lead("disc horn ground", "disc horn.2", "front ground", 1, "BN");
        sheet.Part("horn relay", "relay", "bracket", "across coil: resistor");
        sheet.Part("air horn", "air horn", "bracket");
        sheet.Lead("horn relay ground", "horn relay.85", "front ground", 0.5, "BN");
        sheet.Lead("horn relay supply", "air horn fuse.2", "horn relay.30", 4, "RD/VT", Front);
        sheet.Lead("air horn feed", "horn relay.87", "air horn.+", 4, "VT/RD");
        sheet.Lead("air horn ground", "air horn.-", "front ground", 4, "BN");

        sheet.Lead("headlamp ground", "headlamp.ground", "front ground", 1.5, "BN");
        sheet.Lead("rear cluster ground", "rear cluster.ground", "tail stud", 1, "BN");
        for (var o = 0; o < Outputs.Length; o++)
        {
            Outputs[o].Wire(sheet, FormattableString.Invariant($"bike box.X{o + 1}"), "seat");
        }
    }
}

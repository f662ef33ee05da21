using Loomwright.Design;
using Loomwright.Parts;

namespace Loomwright.Drawing;

/// <summary>Circuit symbols after the ideas of IEC 60617 (from memory), drawn by us on a 20 pixel square around its middle.</summary>
internal static class Symbols
{
    /// <summary>Path data by symbol name; the arrow is filled, all others are lines.</summary>
    public static readonly (string Name, string Path)[] All =
    [
        ("arrow", "M-4-5L5 0L-4 5Z"),
        ("plus", "M8 0A8 8 0 1 1-8 0A8 8 0 1 1 8 0M-4 0H4M0-4V4"),
        ("minus", "M8 0A8 8 0 1 1-8 0A8 8 0 1 1 8 0M-4 0H4"),
        ("ground", "M0-8V0M-8 0H8M-5 4H5M-2 8H2"),
        ("fuse", "M-10 0H10M-8-4H8V4H-8Z"),
        ("breaker", "M-10 0H-5L4-6M5 0H10M-1-6Q2-9 5-6"),
        ("contact", "M-10 0H-5L5-6M5 0H10"),
        ("button", "M-10 0H-5M5 0H10M-6-4H6M0-4V-9M-3-9H3"),
        ("lamp", "M7 0A7 7 0 1 1-7 0A7 7 0 1 1 7 0M-5-5L5 5M5-5L-5 5"),
        ("led", "M-10 0H-4M4 0H10M-4-5V5L4 0ZM4-5V5M1-6L4-9M5-5L8-8"),
        ("diode", "M-10 0H-4M4 0H10M-4-5V5L4 0ZM4-5V5"),
        ("resistor", "M-10 0H-7V-3H7V3H-7V0M7 0H10"),
        ("battery", "M-10 0H-4M-4-8V8M0-4V4M4-8V8M8-4V4M8 0H10"),
        ("motor", "M8 0A8 8 0 1 1-8 0A8 8 0 1 1 8 0M-4 4V-4L0 1L4-4V4"),
        ("generator", "M8 0A8 8 0 1 1-8 0A8 8 0 1 1 8 0M4-3Q0-6-3-3T-3 3T4 3V0H1"),
        ("horn", "M-8-4H-3V4H-8ZM-3-4L8-9V9L-3 4"),
        ("relay", "M-8-5H8V5H-8ZM-4 5L4-5M0-10V-5M0 5V10"),
        ("flasher", "M-9-7H9V7H-9ZM-6 3V-3H-2V3H2V-3H6V3"),
        ("socket", "M-8-6A8 7 0 0 1-8 8M-8 1H8M0-6A8 7 0 0 0 0 8"),
        ("box", "M-8-8H8V8H-8ZM-4-3H4M-4 1H4M-4 5H1"),
        ("load", "M-8-5H8V5H-8Z"),
        ("tick", "M-8-8H8V8H-8Z"),
        ("coil", "M-10 0H-8A4 4 0 0 1 0 0A4 4 0 0 1 8 0H10"),
    ];

    /// <summary>The symbol of a part, or null where its form says enough.</summary>
    public static string? Of(Part part, Model model) => part.Kind switch
    {
        "ground stud" or "ground body" => "ground",
        "fuse" => "fuse",
        "breaker" => "breaker",
        "battery" or "bench supply" => "battery",
        "button" => "button",
        "switch" or "kill switch" or "sensor switch" => "contact",
        "lamp" or "tell-tale" => model.Polarity is null ? "lamp" : "led",
        "horn" or "air horn" => "horn",
        "diode" => "diode",
        "resistor" or "heated grips" => "resistor",
        "relay" or "starter relay" or "solenoid" => "relay",
        "flasher" => "flasher",
        "starter" or "fuel pump" or "fan" => "motor",
        "alternator" => "generator",
        "ignition coil" => "coil",
        "socket" => "socket",
        "load controller" => "box",
        "splice" or "connector" => null,
        _ => "load",
    };
}

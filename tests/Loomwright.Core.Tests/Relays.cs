using Loomwright.Design;

namespace Loomwright.Tests;

/// <summary>Small looms without a box: battery, fuse, switch, lamp.</summary>
internal static class Relays
{
    /// <summary>Battery, main fuse and lock, with the parts still open for more.</summary>
    public const string Head = """
        loomwright: 1
        name: Sandpiper
        parts:
          battery:
            kind: battery
            chemistry: agm
          main fuse:
            kind: fuse
            rating: 15 A
          lock:
            kind: switch
            terminals: [r, s]
            positions:
              "off": []
              riding: [[r, s]]

        """;

    /// <summary>A lock, a light switch behind it, a tail lamp behind that, a horn behind a button.</summary>
    public static Loom Lamp { get; } = Examples.Of(Head + """
          light switch:
            kind: switch
            terminals: [in, out]
            positions:
              "off": []
              lit: [[in, out]]
          tail lamp:
            kind: lamp
            filament: 5 W
          horn button:
            kind: button
          horn:
            kind: horn
        wires:
          - {from: battery.+, to: main fuse.1, size: 1 mm2, length: 0.1 m}
          - {from: main fuse.2, to: lock.r, size: 1 mm2, length: 0.5 m}
          - {from: lock.s, to: light switch.in, size: 1 mm2, length: 0.5 m}
          - {from: light switch.out, to: tail lamp.+, size: 0.75 mm2, length: 1 m}
          - {from: tail lamp.-, to: battery.-, size: 0.75 mm2, length: 1 m}
          - {from: lock.s, to: horn.1, size: 1 mm2, length: 0.5 m}
          - {from: horn.2, to: horn button.1, size: 1 mm2, length: 0.5 m}
          - {from: horn button.2, to: battery.-, size: 1 mm2, length: 0.5 m}
        """);
}

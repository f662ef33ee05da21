using Loomwright.Design;

namespace Loomwright.Tests;

/// <summary>A small bike that starts: headlamp, pump and coil behind the lock, the starter behind its relay on an unfused cable.</summary>
internal static class Starting
{
    public static Loom Bike { get; } = Of("negative");

    public static Loom PositiveGround { get; } = Of("positive");

    /// <summary>The design of it; F stands for the battery post the feed is taken from, G for the one on ground.</summary>
    public static Loom Of(string ground, string guard = "fuse", string conditions = "ambient: 35 C") => Examples.Of($$"""
        loomwright: 1
        name: Sandpiper
        ground: {{ground}}
        conditions: { {{conditions}} }
        parts:
          battery: {kind: battery, chemistry: lead-acid}
          main fuse: {kind: {{guard}}, rating: 20 A}
          lock: {kind: switch, terminals: [r, s], positions: {"off": [], riding: [[r, s]]} }
          start button: {kind: button}
          starter relay: {kind: starter relay}
          starter: {kind: starter}
          head lamp: {kind: lamp, filament: 55 W}
          fuel pump: {kind: fuel pump}
          ignition coil: {kind: ignition coil}
        wires:
          - {name: starter cable, from: battery.F, to: starter relay.30, size: 16 mm2, length: 0.3 m}
          - {name: starter feed, from: starter relay.45, to: starter.F, size: 16 mm2, length: 0.6 m}
          - {name: starter strap, from: starter.G, to: battery.G, size: 16 mm2, length: 0.5 m}
          - {name: fuse lead, from: battery.F, to: main fuse.1, size: 4 mm2, length: 0.1 m}
          - {name: lock feed, from: main fuse.2, to: lock.r, size: 2.5 mm2, length: 0.8 m}
          - {name: lamp feed, from: lock.s, to: head lamp.F, size: 2.5 mm2, length: 0.6 m}
          - {name: lamp ground, from: head lamp.G, to: battery.G, size: 2.5 mm2, length: 1 m}
          - {name: button feed, from: lock.s, to: start button.1, size: 2.5 mm2, length: 0.4 m}
          - {name: relay feed, from: start button.2, to: starter relay.50, size: 2.5 mm2, length: 0.8 m}
          - {name: relay ground, from: starter relay.31, to: battery.G, size: 2.5 mm2, length: 0.3 m}
          - {name: pump feed, from: lock.s, to: fuel pump.F, size: 2.5 mm2, length: 0.7 m}
          - {name: pump ground, from: fuel pump.G, to: battery.G, size: 2.5 mm2, length: 0.7 m}
          - {name: coil feed, from: lock.s, to: ignition coil.15, size: 2.5 mm2, length: 0.7 m}
          - {name: coil ground, from: ignition coil.1, to: battery.G, size: 2.5 mm2, length: 0.7 m}
        functions:
          starter: {works: lock is riding and start button, shows: {starter: turns} }
          headlamp: {works: lock is riding, shows: {head lamp: lit} }
        """.Replace(".F,", ground == "negative" ? ".+," : ".-,", StringComparison.Ordinal).Replace(".G,", ground == "negative" ? ".-," : ".+,", StringComparison.Ordinal));
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>
/// What can hurt, at the step where it matters: on the bench once a stage, since the next one may be another day; on the bike once.
/// What is said of a live lead without a fuse, and of a start in gear, is said at every such step.
/// </summary>
public static class Cautions
{
    public const string LeadAcid = "Lead-acid gives gas and holds acid: goggles on, no sparks or flame near it.";
    public const string Lithium = "Lithium: only its own charger and voltage window. Hot or swelling: get away from it, go outside, call help.";
    public const string UnknownBattery = "The file does not say what is in this battery. Lead-acid gives gas and holds acid: goggles on, no sparks or flame near it. Lithium: only its own charger; hot or swelling, get away from it, go outside, call help.";
    public const string BenchSupply = "Bench supply at 13.0 V, output off while you connect. Never in parallel with a battery or a running engine.";
    public const string Rings = "Rings and watch off.";
    public const string FuseFirst = "The fuse goes in before any other wire, within a hand of plus; every other lead taken from plus has its own.";
    public const string BareEnds = "No loose bare ends: cap every lead that is not used in this stage.";
    public const string LiveKey = "The live key lead goes through its small fuse and a switch. Nobody pushes a live end into a terminal.";
    public const string OhmsPowerOff = "Ohms only with power off. A lamp in the way reads low when cold; with none in it, low is a short.";
    public const string FirstPower = "Only the fuse of this stage. Blown once: find out why. Blown twice: stop. Never a bigger fuse, never foil.";
    public const string BlownFuse = "A fuse blew: find out why before another goes in. Blown twice: stop. Never a bigger fuse, never foil.";
    public const string Hot = "Hot, smoke or smell: minus clip off, key off, do not touch the wire.";
    public const string HotOnTheBike = "Hot, smoke or smell: engine and key off, then the battery as in power down; do not touch the wire.";
    public const string HotOnSupply = "Hot, smoke or smell: output off, do not touch the wire.";
    public const string LiveProbe = "Probing live: black lead clipped on, red tip in one hand, insulated but for its point, from behind the plug. Never bridge two terminals.";
    public const string VoltsAcross = "Dial on V, red plug in V Ω: left in an amps socket it is a dead short across the battery.";
    public const string LastClip = "The clip that closes the circuit may spark: goggles on, face away from the battery.";
    public const string AmpsInLine = "Across the supply the amps socket is a short: this meter's leads go only into the gap.";
    public const string AmpsSocket = "After amps the red plug goes back to V: across the supply the amps socket is a short.";
    public const string InGroundLead = "Meter in the ground lead: key off, nothing switched on, never while cranking. Red plug back to V after.";
    public const string HotLamp = "A filament lamp and its glass get hot within seconds: clear of the bench cloth and of wires.";
    public const string Horn = "A horn at arm's length hurts: cover it or turn it away, press short.";
    public const string HotResistor = "A load resistor burns skin and softens tape within a minute: fingers, tape and wires clear of it.";
    public const string Stand = "On the stand, in neutral, wheel free, from first power on: one wire in the wrong place cranks or fires it with no hand on the button.";
    // Ten seconds, then let it cool: common practice, no source.
    public const string Starter = "A starter jumps: clamped on the bench; on the bike on the stand, in neutral, wheel free. Its cable has no fuse: booted; on the bench last on, first off; on the bike on before the ground lead. Ten seconds at most, then let it cool.";
    public const string StarterLead = "This post is live and its lead has no fuse: rings and watch off, the tool touches nothing else.";
    public const string Pump = "A fuel pump dry for ten seconds at most, no fuel near the bench. Its lead off and capped until this stage.";
    public const string Coil = "An ignition coil gives thousands of volts: its high lead on a plug that lies on ground, fingers away. Ten seconds at most, then let it cool: fed while nothing turns it gets hot.";
    public const string Cranks = "This cranks the engine. On its stand, in neutral, wheel free, hands and leads clear.";
    public const string MayStart = "The engine may start: outdoors or with an extractor, clear of chain, wheel and exhaust, a thumb on the kill switch.";
    public const string InGear = "In gear: driven wheel off the ground, nobody before or behind it. If the engine starts: kill switch to stop before the clutch is let go.";
    public const string Running = "Engine running: outdoors or with an extractor, clear of chain, wheel and exhaust. Never take the battery off while it runs.";

    /// <summary>What a battery asks for by what is in it; both where the file does not say.</summary>
    public static string Of(Part battery) => battery.Settings.Word("chemistry") is not { } inside ? UnknownBattery
        : Names.Same(inside, "lifepo4") ? Lithium
        : Names.Same(inside, "lead-acid") || Names.Same(inside, "agm") ? LeadAcid
        : UnknownBattery;

    /// <summary>
    /// What to mind while something is done on a bike of which nobody knows what is wrong: what runs in it as designed, and where there
    /// is an engine that it may crank or fire all the same.
    /// </summary>
    /// <param name="loom">What is connected.</param>
    /// <param name="done">From rest, in order.</param>
    /// <param name="isOnTheBench">Whether it lies on the bench, where no engine is.</param>
    public static ImmutableArray<string> While(Loom loom, IEnumerable<Operation> done, bool isOnTheBench)
    {
        var frames = new Rig(loom).Play(done);
        var cranks = frames.Any(f => f.Seen.Any(s => Line.IsOn(s) && Risky.IsStarter(loom.Part(s.Part)!)));
        ImmutableArray<string> first = isOnTheBench ? (loom.Parts.Any(Risky.IsStarter) ? [Starter] : [])
            : cranks ? [Cranks, MayStart]
            : loom.Parts.Any(p => Risky.IsStarter(p) || Risky.RunsEngine(p)) ? [Stand]
            : [];
        return [.. first.Concat(frames.SelectMany(f => Risky.Cautions(loom, f))).Distinct()];
    }

    /// <summary>What to do where a battery of a design gets hot itself; empty where no battery of it can be a lithium one.</summary>
    public static string HotBattery(Loom loom)
    {
        var all = loom.Parts.Where(p => p.Kind == "battery").Select(Of).ToList();
        return all.Contains(Lithium) ? "Lithium battery hot or swelling: get away from it, go outside, call help."
            : all.Contains(UnknownBattery) ? "Battery hot or swelling: the file does not say what is in it, so take it for a lithium one. Get away from it, go outside, call help."
            : "";
    }
}

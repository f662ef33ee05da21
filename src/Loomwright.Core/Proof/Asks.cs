using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>What a measurement that was added for a fault asks, in a few words.</summary>
internal static class Asks
{
    public static string Of(Fault fault, Func<TerminalRef, Mark> mark) => fault switch
    {
        Fault.Open f => $"is {f.Wire} on at both ends",
        Fault.Moved f => $"is {f.Wire} on {mark(f.End)}, not on {mark(f.To)}",
        Fault.Swapped f => $"are {mark(f.A)} and {mark(f.B)} exchanged",
        Fault.Lost f => $"has {f.Ground} its own lead to battery minus",
        Fault.Shorted f => $"do {mark(f.A)} and {mark(f.B)} touch",
        Fault.Dead { Inside: { } inside } f => $"is {f.Part} {inside} whole",
        Fault.Dead f => $"is {f.Part} whole",
        Fault.High f => $"does {f.Joint} join well",
        Fault.Stuck f => $"does {f.Switch} move",
        Fault.Leak f => $"does {f.Part} open all the way",
        Fault.Reversed f => $"is {f.Part} the right way round",
        Fault.Setting f => $"is {f.Part} set right",
        _ => throw new InvalidOperationException("a fault of no known form"),
    };
}

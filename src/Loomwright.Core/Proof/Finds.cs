using System.Globalization;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Faults;

namespace Loomwright.Proof;

/// <summary>What a measurement that was added would show, in words.</summary>
internal static class Finds
{
    /// <summary>The first of its faults, and how many more.</summary>
    public static string Of(IReadOnlyList<Fault> faults, Func<TerminalRef, Mark> mark) =>
        string.Create(CultureInfo.InvariantCulture, $"Would show: {Told(faults[0], mark)}{(faults.Count > 1 ? $", and {faults.Count - 1} more" : "")}.");

    /// <summary>One fault.</summary>
    public static string Told(Fault fault, Func<TerminalRef, Mark> mark) => fault switch
    {
        Fault.Open f => $"{f.Wire} left off or broken",
        Fault.Moved f => $"{f.Wire} on {mark(f.To)} in place of {mark(f.End)}",
        Fault.Swapped f => $"{mark(f.A)} and {mark(f.B)} exchanged",
        Fault.Lost f => $"{f.Ground} without its own way to battery minus",
        Fault.Shorted f => $"{mark(f.A)} and {mark(f.B)} touching",
        Fault.Dead { Inside: { } inside } f => $"{f.Part} {inside} dead",
        Fault.Dead f => $"{f.Part} dead",
        Fault.High f => $"a bad joint in {f.Joint}",
        Fault.Stuck f => $"{f.Switch} stuck at {f.At}",
        Fault.Leak f => $"{f.Part} not opening all the way",
        Fault.Reversed f => $"{f.Part} the wrong way round",
        Fault.Setting f => $"{f.Part} set otherwise",
        _ => throw new InvalidOperationException("a fault of no known form"),
    };
}

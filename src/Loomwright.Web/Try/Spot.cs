using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Text;

namespace Loomwright.Web.Try;

/// <summary>Where a mistake sits, so that the eye finds it.</summary>
internal static class Spot
{
    /// <summary>Names of the wires it is on; for a part or a terminal, the wires that end there.</summary>
    public static IReadOnlyList<string> Wires(Fault fault, Loom loom) => fault switch
    {
        Fault.Open f => [f.Wire],
        Fault.Moved f => [f.Wire],
        Fault.Swapped f => At(loom, t => t == f.A || t == f.B),
        Fault.Shorted f => At(loom, t => t == f.A || t == f.B),
        Fault.Lost f => At(loom, t => Names.Same(t.Part, f.Ground)),
        Fault.Dead f => At(loom, t => Names.Same(t.Part, f.Part)),
        Fault.High f => loom.Wire(f.Joint) is { } wire ? [wire.Name] : At(loom, t => Names.Same(t.Part, f.Joint)),
        Fault.Stuck f => At(loom, t => Names.Same(t.Part, f.Switch)),
        Fault.Leak f => At(loom, t => Names.Same(t.Part, f.Part)),
        Fault.Setting f => AtSetting(f, loom) is { Count: > 0 } own ? own : At(loom, t => Names.Same(t.Part, f.Part)),
        Fault.Reversed f => At(loom, t => Names.Same(t.Part, f.Part)),
        _ => throw new InvalidOperationException("a fault of no known form"),
    };

    /// <summary>Names of the wires on the output or the input of a box that a setting is of; none where it is of a part as a whole.</summary>
    public static IReadOnlyList<string> AtSetting(Fault.Setting setting, Loom loom)
    {
        if (setting.Key.Split('/') is not [var group, var name, _] || loom.Part(setting.Part) is not { } part || Bike.Model(part).Controller is not { } box)
        {
            return [];
        }

        var terminal = group == "outputs" ? box.Outputs.FirstOrDefault(o => Names.Same(o.Name, name))?.Terminal : box.Inputs.FirstOrDefault(i => Names.Same(i.Name, name))?.Terminal;
        return terminal is null ? [] : At(loom, t => Names.Same(t.Part, part.Name) && Names.Same(t.Terminal, terminal));
    }

    private static IReadOnlyList<string> At(Loom loom, Func<TerminalRef, bool> touches) =>
        [.. loom.Wires.Where(w => touches(w.From) || touches(w.To)).Select(w => w.Name)];
}

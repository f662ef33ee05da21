using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Web.Try;

/// <summary>Tells the faults of one bike as a builder would.</summary>
internal sealed class MistakeWords(Loom loom)
{
    private readonly Dictionary<string, Model> _models = loom.Parts.ToDictionary(p => p.Name, Bike.Model, Names.Comparer);

    public Mistake Of(Fault fault) => fault switch
    {
        Fault.Open f => new(fault, $"{f.Wire} is left out or broken", f.Wire),
        Fault.Moved f => new(fault, $"{f.Wire} sits on {At(f.To)} in place of {At(f.End)}", f.Wire),
        Fault.Swapped f => new(fault, $"what belongs on {At(f.A)} and on {At(f.B)} is swapped", f.A.Part),
        Fault.Lost f => new(fault, $"{f.Ground} has lost its own lead to battery minus", f.Ground),
        Fault.Shorted f => new(fault, $"{At(f.A)} and {At(f.B)} touch", f.A.Part),
        Fault.Dead { Inside: { } inside } f => new(fault, $"{At(new TerminalRef(f.Part, inside))} is dead", f.Part),
        Fault.Dead f => new(fault, $"{f.Part} is dead", f.Part),
        Fault.High f => new(fault, $"{f.Joint} has a bad joint, {new Quantities.Resistance(f.Ohms)}", f.Joint),
        Fault.Stuck f => new(fault, $"{f.Switch} is stuck at {f.At}", f.Switch),
        Fault.Leak f => new(fault, $"{f.Part} leaks when open, {new Quantities.Resistance(f.Ohms)}", f.Part),
        Fault.Setting f => new(fault, $"{f.Part} has {f.Key} set to {f.Value}", f.Part),
        Fault.Reversed f => new(fault, $"{f.Part} is connected the wrong way round", f.Part),
        _ => throw new InvalidOperationException("a fault of no known form"),
    };

    // The mark and the owner's name for what goes there, together.
    private string At(TerminalRef terminal)
    {
        var place = terminal.Terminal.Length == 0 ? terminal.Part : $"{terminal.Part} {terminal.Terminal}";
        var name = _models.GetValueOrDefault(terminal.Part)?.Terminals.FirstOrDefault(t => Names.Same(t.Mark, terminal.Terminal))?.Name;
        return name is null || Names.Same(name, terminal.Terminal) ? place : $"{place} ({name})";
    }
}

using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Text;
using Loomwright.Web.Try;

namespace Loomwright.Web.Picture;

/// <summary>What can be pointed at in the picture.</summary>
/// <param name="Kind">wire or part.</param>
/// <param name="Name">Its name in the file.</param>
public readonly record struct Thing(string Kind, string Name)
{
    public const string Wire = "wire";
    public const string Part = "part";

    public bool IsWire => Kind == Wire;

    /// <summary>Whether the design has it.</summary>
    public bool IsIn(Loom loom) => IsWire ? loom.Wire(Name) is not null : loom.Part(Name) is not null;

    /// <summary>The mistakes that can be made right here, in the catalogue's order.</summary>
    public IEnumerable<Mistake> Mistakes(IEnumerable<Mistake> catalogue)
    {
        var (wire, name) = (IsWire, Name);
        return catalogue.Where(m => (wire ? OnWire(m.Fault) : OnPart(m.Fault)).Any(n => Names.Same(n, name)));
    }

    private static IEnumerable<string> OnWire(Fault fault) => fault switch
    {
        Fault.Open f => [f.Wire],
        Fault.Moved f => [f.Wire],
        Fault.High f => [f.Joint],
        _ => [],
    };

    private static IEnumerable<string> OnPart(Fault fault) => fault switch
    {
        Fault.Swapped f => [f.A.Part, f.B.Part],
        Fault.Shorted f => [f.A.Part, f.B.Part],
        Fault.Lost f => [f.Ground],
        Fault.Dead f => [f.Part],
        Fault.High f => [f.Joint],
        Fault.Stuck f => [f.Switch],
        Fault.Leak f => [f.Part],
        Fault.Setting f => [f.Part],
        Fault.Reversed f => [f.Part],
        _ => [],
    };
}

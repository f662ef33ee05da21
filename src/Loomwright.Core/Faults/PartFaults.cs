using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;

namespace Loomwright.Faults;

/// <summary>What goes wrong inside parts, as their models tell it.</summary>
internal sealed class PartFaults(CatalogueSite site)
{
    // A dirty switch as told in repair stories (judgement).
    private const double LeakOhms = 30;

    /// <summary>Each part dead, each thing in it that can die alone, each part with a plus and a minus turned round.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> DeadOrReversed() =>
    [
        .. site.Wiring.Parts.Where(p => !p.Model.Elements.IsEmpty).SelectMany(Dead),
        .. site.Wiring.Parts.Where(p => p.Model.Polarity is not null).Select(p => ((Fault)new Fault.Reversed(p.Name), By(new Cause("reversed")))),
    ];

    /// <summary>Each switch and relay stuck in each position, each open contact leaking.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> Contacts() =>
    [
        .. from part in site.Loom.Parts
           from moving in Moving.Of(part)
           from position in moving.Positions
           select ((Fault)new Fault.Stuck(moving.Name, position), By(new Cause(site.Own("stuck", part.Name), 1.0 / moving.Positions.Count))),
        .. from part in site.Wiring.Parts
           where part.Model.Elements.Any(Compiling.IsContact)
           select ((Fault)new Fault.Leak(part.Name, LeakOhms), By(new Cause(site.Own("leaking", part.Name)))),
    ];

    /// <summary>Each setting that a kind says is easily wrong.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> Settings() =>
        from part in site.Wiring.Parts
        from wrong in part.Model.WrongSettings
        where OtherSetting.In(site.Loom.Part(part.Name)!, wrong.Key, wrong.Value) is not null
        select ((Fault)new Fault.Setting(part.Name, wrong.Key, wrong.Value), By(new Cause(wrong.Cause)));

    private IEnumerable<(Fault, ImmutableArray<Cause>)> Dead(PartPlace part)
    {
        var by = By(new Cause(part.Model.DeadBy ?? site.Own("dead", part.Name)));
        yield return (new Fault.Dead(part.Name), by);
        foreach (var inside in part.Model.Inside)
        {
            yield return (new Fault.Dead(part.Name, inside), by);
        }
    }

    private static ImmutableArray<Cause> By(Cause cause) => [cause];
}

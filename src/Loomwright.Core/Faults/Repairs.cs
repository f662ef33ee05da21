using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>What sets a fault right, in words; equal where the same work does.</summary>
internal sealed class Repairs(CatalogueSite site)
{
    public string Of(Fault fault) => fault switch
    {
        Fault.Open f => Renew(f.Wire),
        Fault.High f => site.Loom.Wire(f.Joint) is { } wire ? Renew(wire.Name) : Ground(f.Joint),
        Fault.Lost f => Ground(f.Ground),
        Fault.Moved f => $"put the end of {f.Wire} that sits on {f.To} back on {f.End}",
        Fault.Swapped f => $"exchange what sits on {f.A} and on {f.B}",
        Fault.Shorted f => $"separate {f.A} from {f.B}, they touch",
        Fault.Dead f => site.Part(f.Part).Model.DeadBy is null ? $"replace {f.Part}" : $"put {f.Part} in",
        Fault.Stuck f => $"replace {site.Loom.Parts.SelectMany(Moving.Of).First(m => Names.Same(m.Name, f.Switch)).Moving.Part}",
        Fault.Leak f => $"replace {f.Part}",
        Fault.Reversed f => $"turn {f.Part} round: exchange its plus and minus",
        Fault.Setting f => site.Part(f.Part).Model.WrongSettings.Any(w => w.Cause == WrongSetting.Low && Names.Same(w.Key, f.Key)) ? $"charge {f.Part}" : $"make {f.Part} as designed: {Setting(f.Key)}",
        _ => throw new InvalidOperationException("a fault of no known form"),
    };

    /// <summary>A setting's key in words: <c>limit of output stop lamp</c> for <c>outputs/stop lamp/limit</c>.</summary>
    public static string Setting(string key) => key.Split('/') is [var group, var name, var own] ? $"{own} of {group.TrimEnd('s')} {name}" : key;

    private static string Renew(string wire) => $"renew {wire} and both its ends";

    // With one lead of its own, the work is at that lead.
    private string Ground(string ground) => GroundLeads.Of(site.Wiring, ground) is [var lead] ? Renew(lead) : $"clean {ground} to bare metal and tighten it";
}

using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Sizing;
using Loomwright.Web.Bikes;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Sizes;

/// <summary>Every wire, fuse and load against what flows, by a rule the reader picks.</summary>
public sealed partial class SizesPage
{
    private Bike? bike;
    private Sized? sized;
    private string? unknown;

    /// <summary>The design's path in the folder.</summary>
    [Parameter]
    public string Path { get; set; } = "";

    /// <summary>Name of the ampacity rule; the design's own when left out or unknown.</summary>
    [SupplyParameterFromQuery(Name = "rule")]
    public string? Rule { get; set; }

    [Inject]
    private Garage Garage { get; set; } = null!;

    // What is thinner, larger or longer than the rules allow, the wires first.
    private string[] ToLookAt =>
    [
        .. sized!.Wires.Where(w => w.IsThin || w.Enough is null).Select(w => $"{w.Wire.Name} is {w.Wire.Size}, thinner than this rule asks. {w.Reason}"),
        .. sized.Fuses.Where(f => f.Largest is { } largest && f.Guard.Rating.Amps > largest.Amps).Select(f => $"{f.Guard.InWords} stands before {f.WeakestWire}, which this rule allows {f.Largest!.Value.Printed} at the most."),
        .. sized.Fuses.Where(f => f.ColdMayOpen).Select(f => $"{f.Guard.InWords}: all lamps behind it switched on cold take {f.ColdAmps.Printed}, which may open it."),
        .. sized.Circuits.Where(c => !c.IsWithin).Select(c => $"{Words.Name(c.Load)}: {c.Drop} is lost on the way, {new Share(c.Share)} of the supply; the limit is {new Share(c.Limit.Limit)} {c.Limit.Span}."),
    ];

    protected override void OnParametersSet()
    {
        bike = Garage.Live(Path)?.Current.Bike;
        if (bike?.Loom is { } loom)
        {
            var picked = Rule is null ? null : AmpacityRules.Find(Rule);
            unknown = picked is null ? Rule ?? AmpacityRules.Unknown(loom.Conditions) : null;
            sized = bike.Size(picked ?? AmpacityRules.Of(loom.Conditions));
        }
    }
}

using System.Collections.Immutable;

namespace Loomwright.Faults;

/// <summary>What goes wrong where currents come home: studs, lumps of metal, parts that are grounded by what they sit on.</summary>
internal sealed class GroundFaults(CatalogueSite site)
{
    // Of the points that were painted over half conduct nothing (judgement).
    private const double CoatedLost = 0.5;

    /// <summary>Each of them off.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> Lost() =>
        Grounds.Select(g => ((Fault)new Fault.Lost(g), (ImmutableArray<Cause>)[new Cause("feed or ground left out"), new Cause("coated ground", CoatedLost)]));

    /// <summary>A bad joint in each of them.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> High() =>
        from ground in Grounds
        from ohms in WireFaults.BadJointOhms
        let share = 1.0 / WireFaults.BadJointOhms.Length
        select ((Fault)new Fault.High(ground, ohms), (ImmutableArray<Cause>)[new Cause("high ground joint", share), new Cause("coated ground", (1 - CoatedLost) * share)]);

    // First what has a lead of its own back to battery minus.
    private IEnumerable<string> Grounds =>
        site.Wiring.Parts.Where(p => site.IsGround(p.Name) && !GroundLeads.Of(site.Wiring, p.Name).IsEmpty).Select(p => p.Name)
            .Concat(site.Wiring.Links.Where(l => l.IsJoint && GroundLeads.Of(site.Wiring, l.Owner).IsEmpty).Select(l => l.Owner));
}

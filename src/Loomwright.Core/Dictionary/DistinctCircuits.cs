using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Loomwright.Faults;
using Loomwright.Simulation;

namespace Loomwright.Dictionary;

/// <summary>A wiring with all the faults that make it; none for the healthy one.</summary>
internal sealed record DistinctCircuit(Wiring Wiring, ImmutableArray<ListedFault> Faults)
{
    /// <summary>Whether more than links differs: it was compiled anew, or how boxes decide or which buttons they hear.</summary>
    public bool Decides(Wiring healthy) =>
        IsCompiledAnew(Wiring, healthy) || !Wiring.Boxes.SequenceEqual(healthy.Boxes) || Wiring.Colds.Length != healthy.Colds.Length || !DataLeads.HearAlike(Wiring, healthy);

    /// <summary>Whether it was made from parts that are set otherwise: then anything in it may differ, contacts, fuses and flashers too.</summary>
    public static bool IsCompiledAnew(Wiring wiring, Wiring healthy) => wiring.Parts != healthy.Parts;
}

/// <summary>Faults that come to the same circuit, put together.</summary>
internal static class DistinctCircuits
{
    /// <summary>The healthy wiring first, then the others in the order of their first fault. A fault that changes nothing or sets a part otherwise stands by itself.</summary>
    /// <param name="healthy">The wiring without any.</param>
    /// <param name="faults">The faults.</param>
    /// <param name="together">False puts none together: each fault is a circuit of its own.</param>
    /// <param name="workers">How many threads work. The answer does not depend on it.</param>
    public static ImmutableArray<DistinctCircuit> Of(Wiring healthy, ImmutableArray<ListedFault> faults, bool together, int workers)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        var circuits = new List<DistinctCircuit> { new(healthy, []) };
        foreach (var (fault, wiring, name) in faults.AsParallel().AsOrdered().WithDegreeOfParallelism(Math.Max(1, workers)).Select(Made))
        {
            if (name.Length > 0 && places.TryGetValue(name, out var place))
            {
                circuits[place] = circuits[place] with { Faults = circuits[place].Faults.Add(fault) };
                continue;
            }

            places.TryAdd(name, circuits.Count);
            circuits.Add(new DistinctCircuit(wiring, [fault]));
        }

        return [.. circuits];

        (ListedFault Fault, Wiring Wiring, string Name) Made(ListedFault fault)
        {
            var wiring = healthy.With(fault.Fault);
            return (fault, wiring, together ? Name(healthy, wiring) : "");
        }
    }

    /// <summary>The links that differ, each with what it now is; empty when none does or when more than links differ.</summary>
    private static string Name(Wiring healthy, Wiring wiring)
    {
        if (DistinctCircuit.IsCompiledAnew(wiring, healthy) || (!wiring.Boxes.Equals(healthy.Boxes) && !wiring.Boxes.SequenceEqual(healthy.Boxes)))
        {
            return "";
        }

        var name = new StringBuilder();
        for (var l = 0; l < wiring.Links.Length; l++)
        {
            if (l < healthy.Links.Length && ReferenceEquals(wiring.Links[l], healthy.Links[l]))
            {
                continue;
            }

            // No fault of a link changes in which positions a contact is closed, so that list is not written.
            // A link has no way round unless its curve has: one that is straight through nothing may be turned.
            var link = wiring.Links[l];
            var turned = link.Curve is Parts.Ohms && link.From > link.To;
            var (from, to) = turned ? (link.To, link.From) : (link.From, link.To);
            name.Append(CultureInfo.InvariantCulture, $"{(l < healthy.Links.Length ? l : -1)}:{from}-{to} {link.Curve} {link.Off} {link.Switching} {link.Cold};");
        }

        return name.ToString();
    }
}

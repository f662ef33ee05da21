using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Cases;

/// <summary>What of the catalogue of a case's circuit is the cause: the same thing wrong, whatever its ohms, or what the case says is the same work.</summary>
internal sealed class Accepted
{
    private readonly ImmutableArray<ListedFault> _listed;

    private Accepted(ImmutableArray<ListedFault> listed, ImmutableArray<ListedFault> namedBy) => (_listed, NamedBy) = (listed, namedBy);

    /// <summary>What the case itself says is the same, the way it is found first; then it alone counts.</summary>
    public ImmutableArray<ListedFault> NamedBy { get; }

    /// <summary>Of one case.</summary>
    public static Accepted Of(Loom loom, Case told)
    {
        var listed = Catalogue.List(loom);
        return new(listed, [.. told.NamedBy.SelectMany(id => listed.Where(f => Names.Same(id, f.Fault.ToString())))]);
    }

    /// <summary>The cause as the catalogue lists it, else by itself.</summary>
    public ListedFault Listed(Fault cause) => _listed.FirstOrDefault(f => Names.Same(f.Fault.ToString(), cause.ToString())) ?? new ListedFault(cause, "", []);

    /// <summary>Repairs of the listed faults that are that cause.</summary>
    public IEnumerable<string> For(Fault cause) => _listed.Where(f => NamedBy.IsEmpty ? SameWork(f.Fault, cause) : NamedBy.Contains(f)).Select(f => f.Repair).Distinct(StringComparer.Ordinal);

    // The joint is the same whatever its ohms, a contact whatever its setting.
    private static bool SameWork(Fault listed, Fault cause) => Names.Same(listed.ToString(), cause.ToString()) || (listed, cause) switch
    {
        (Fault.High a, Fault.High b) => Names.Same(a.Joint, b.Joint),
        (Fault.High a, Fault.Open b) => Names.Same(a.Joint, b.Wire),
        (Fault.Open a, Fault.High b) => Names.Same(a.Wire, b.Joint),
        (Fault.Leak a, Fault.Leak b) => Names.Same(a.Part, b.Part),
        (Fault.Setting a, Fault.Setting b) => Names.Same(a.Part, b.Part) && Names.Same(a.Key, b.Key),
        _ => false,
    };
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>What goes wrong between neighbours in one plug, or on one part without plugs.</summary>
internal sealed class PlugFaults(CatalogueSite site)
{
    /// <summary>Neighbours that both carry wires, exchanged.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> Exchanged() =>
        from pair in Apart.Where(p => site.Wired.Contains(p.A) && site.Wired.Contains(p.B))
        select ((Fault)new Fault.Swapped(pair.A, pair.B), ExchangedBy(pair.A, pair.B));

    /// <summary>Neighbours of which one carries a wire, touching.</summary>
    public IEnumerable<(Fault Fault, ImmutableArray<Cause> Causes)> Touching() =>
        from pair in Apart.Where(p => site.Wired.Contains(p.A) || site.Wired.Contains(p.B))
        select ((Fault)new Fault.Shorted(pair.A, pair.B), (ImmutableArray<Cause>)[new Cause("stray strand")]);

    private IEnumerable<(TerminalRef A, TerminalRef B)> Apart => site.Neighbours.Where(p => !site.Nets.Joins(p.A, p.B));

    private ImmutableArray<Cause> ExchangedBy(TerminalRef a, TerminalRef b)
    {
        var causes = ImmutableArray.Create(new Cause("swapped pair"));
        var model = site.Part(a.Part).Model;
        if (Lights(model, a) && Lights(model, b))
        {
            causes = causes.Add(new Cause("filaments crossed"));
        }

        return model.Unmarked ? causes.Add(new Cause("switch misread", 1.0 / (model.Terminals.Length - 1))) : causes;
    }

    private static bool Lights(Model model, TerminalRef terminal) =>
        model.Sights.OfType<Sight.Lamp>().Any(s => model.Elements.Any(e => Names.Same(e.Name, s.Element) && Names.Same(e.From, terminal.Terminal)));
}

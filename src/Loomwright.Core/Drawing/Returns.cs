using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Which wires are returns of a single load or switch: those are drawn as a ground symbol that names where they go. Leads that carry a sum stay lines.</summary>
internal static class Returns
{
    /// <summary>The returns, each with the end that is the load's.</summary>
    public static Dictionary<Wire, TerminalRef> Of(Loom loom, IReadOnlyDictionary<string, Model> models)
    {
        var grounds = Grounds(loom, models);
        var found = new Dictionary<Wire, TerminalRef>(ReferenceEqualityComparer.Instance);
        foreach (var wire in loom.Wires)
        {
            if (grounds.Contains(wire.To.Part) && HasOwnReturn(wire.From))
            {
                found[wire] = wire.From;
            }
            else if (grounds.Contains(wire.From.Part) && HasOwnReturn(wire.To))
            {
                found[wire] = wire.To;
            }
        }

        return found;

        bool HasOwnReturn(TerminalRef end) =>
            models.TryGetValue(end.Part, out var model) && model.Supply is null && model.Controller is null && model.Charging.IsEmpty && !IsPoint(model) && !IsPlug(model);
    }

    /// <summary>Whether a part is one point: a splice, a stud, a ground body.</summary>
    public static bool IsPoint(Model model) => model.Terminals is [{ Mark.Length: 0 }];

    /// <summary>Whether a part is a plug and its socket.</summary>
    public static bool IsPlug(Model model) => model.Terminals.Length > 0 && model.Terminals.All(t => t.Plug is "a" or "b");

    // The points joined to the supply's minus, or to a stud or ground body, by wires, points and plugs alone.
    private static HashSet<string> Grounds(Loom loom, IReadOnlyDictionary<string, Model> models)
    {
        var reached = new HashSet<TerminalRef>(
            loom.Parts.Where(p => p.Kind is "ground stud" or "ground body").Select(p => new TerminalRef(p.Name, ""))
                .Concat(models.Where(m => m.Value.Supply is not null).Select(m => new TerminalRef(m.Key, m.Value.Supply!.Minus))));
        bool grew;
        do
        {
            grew = false;
            foreach (var wire in loom.Wires)
            {
                grew |= reached.Contains(wire.From) && reached.Add(wire.To);
                grew |= reached.Contains(wire.To) && reached.Add(wire.From);
            }

            foreach (var (part, model) in models.Where(m => IsPlug(m.Value)))
            {
                foreach (var cavity in model.Elements)
                {
                    var (a, b) = (new TerminalRef(part, cavity.From), new TerminalRef(part, cavity.To));
                    grew |= reached.Contains(a) && reached.Add(b);
                    grew |= reached.Contains(b) && reached.Add(a);
                }
            }
        }
        while (grew);

        return reached.Where(t => t.Terminal.Length == 0 && models.TryGetValue(t.Part, out var m) && IsPoint(m)).Select(t => t.Part).ToHashSet(Names.Comparer);
    }
}

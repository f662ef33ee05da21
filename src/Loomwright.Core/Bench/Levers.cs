using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>
/// Which controls can matter to a place: by contacts on the way to it, by the coil behind a relay's contact, by what a box
/// is asked before it switches an output on, and by the buttons that report over a data lead.
/// </summary>
internal sealed class Levers
{
    private readonly Paths _paths;
    private readonly HashSet<TerminalRef> _rails;

    public Levers(Paths paths)
    {
        static bool IsFixed(Tie t) => t.Via is Via.Wire or Via.Joint or Via.Fuse;
        _paths = paths;
        _rails = paths.Joined(paths.Feed, IsFixed);
        _rails.UnionWith(paths.Joined(paths.Return, IsFixed));
    }

    /// <summary>Their names.</summary>
    public IReadOnlyCollection<string> Of(IEnumerable<TerminalRef> places)
    {
        var controls = new HashSet<string>(Names.Comparer);
        var seen = new HashSet<TerminalRef>();
        var todo = new Queue<TerminalRef>(places);
        while (todo.TryDequeue(out var at))
        {
            if (!seen.Add(at))
            {
                continue;
            }

            foreach (var tie in _paths.At(at))
            {
                controls.UnionWith(Gates(tie).OfType<Gate.ByControl>().Select(g => g.Control));
                Enqueue(Coils(tie));
                Enqueue(tie.Carries && tie.Via != Via.Output && !_rails.Contains(at) ? [tie.Other(at)] : []);
            }

            Enqueue(Asked(at));
            if (Block(at) is { } block)
            {
                controls.UnionWith(block.Model.Block!.Controls);
                Enqueue(block.Model.Polarity is { } poles ? [new(block.Part, poles.Plus), new(block.Part, poles.Minus)] : []);
            }
        }

        return controls;

        void Enqueue(IEnumerable<TerminalRef> more)
        {
            foreach (var next in more)
            {
                todo.Enqueue(next);
            }
        }
    }

    /// <summary>Every gate an element stands behind.</summary>
    public static IEnumerable<Gate> Gates(Tie tie) => Gates(tie.Element?.Gate);

    /// <summary>The inputs a condition asks, by their terminals.</summary>
    public static IEnumerable<TerminalRef> Inputs(string part, Controller box, Expression condition)
    {
        var names = condition.NamesUsed().ToHashSet(Names.Comparer);
        return box.Inputs.Where(i => names.Contains(i.Name)).Select(i => new TerminalRef(part, i.Terminal)).Distinct();
    }

    private static IEnumerable<Gate> Gates(Gate? gate) => gate switch
    {
        null => [],
        Gate.Both both => Gates(both.One).Concat(Gates(both.Other)),
        _ => [gate],
    };

    private IEnumerable<TerminalRef> Coils(Tie tie) =>
        from gate in Gates(tie).OfType<Gate.ByRelay>()
        let model = _paths.Models[tie.Part!.Name]
        from coil in model.Relays.First(r => r.Name == gate.Relay).Coils
        let element = model.Elements.First(e => e.Name == coil)
        from end in new[] { element.From, element.To }
        select new TerminalRef(tie.Part!.Name, end);

    private IEnumerable<TerminalRef> Asked(TerminalRef at)
    {
        if (_paths.Models.GetValueOrDefault(at.Part)?.Controller is not { } box || box.Outputs.FirstOrDefault(o => Names.Same(o.Terminal, at.Terminal)) is not { } output)
        {
            return [];
        }

        return Inputs(at.Part, box, new Expression.And(box.Awake, output.When)).Append(new(at.Part, box.Supply)).Append(new(at.Part, box.Ground));
    }

    private (string Part, Model Model)? Block(TerminalRef at) =>
        _paths.Models.GetValueOrDefault(at.Part) is { Block: { } block } model && (Names.Same(block.Terminal, at.Terminal) || (block.Second is { } second && Names.Same(second, at.Terminal)))
            ? (at.Part, model)
            : null;
}

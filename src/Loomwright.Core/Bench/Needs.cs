using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>
/// Gathers what must be connected for something to work as it does at one moment: ways of feed and return, the coils that
/// pull in the relays on them, the boxes that switch them on, and what these boxes are told.
/// </summary>
internal sealed class Needs(Paths paths, Frame at, Frame atRest)
{
    private readonly Routes _now = new(paths, at);
    private readonly Routes _rest = new(paths, atRest);
    private readonly HashSet<string> _relays = new(Names.Comparer);
    private readonly HashSet<TerminalRef> _outputs = [];
    private readonly HashSet<TerminalRef> _ends = [];

    /// <summary>All that was gathered, in the order to be connected.</summary>
    public Reach Reach { get; private set; } = Reach.None;

    /// <summary>A load with both its ways; false when it has not both.</summary>
    public bool Load(Tie load)
    {
        if (_now.Through(load) is not { } through)
        {
            return false;
        }

        _ends.UnionWith([load.A, load.B]);
        Reach = Reach.With(Routes.Of(through.Feed.Reverse())).With(new Reach([load.Part!.Name], [])).With(Routes.Of(through.Back));
        Behind(through.Feed);
        Behind(through.Back);
        return true;
    }

    /// <summary>A box that lives and is told what wakes it, or what makes it switch one output on.</summary>
    public void Box(string part, Expression asks)
    {
        var box = paths.Models[part].Controller!;
        Way(new(part, box.Supply), IsFeed);
        Way(new(part, box.Ground), IsReturn);
        Reach = Reach.With(new Reach([part], []));
        var seen = at.Controllers.First(c => Names.Same(c.Part, part));
        foreach (var terminal in Levers.Inputs(part, box, asks))
        {
            _ends.Add(terminal);
            foreach (var input in box.Inputs.Where(i => Names.Same(i.Terminal, terminal.Terminal) && seen.Inputs.Any(s => s.Active && s.Name == i.Name)))
            {
                if (input.Button is null)
                {
                    Way(terminal, input.ActiveAtGround ? IsReturn : IsFeed);
                }
                else
                {
                    Block(terminal);
                }
            }
        }
    }

    /// <summary>What the controls that were moved join now and did not at rest, or the reverse, each with the way to both its ends.</summary>
    public void Controls(IEnumerable<string> moved)
    {
        foreach (var control in moved)
        {
            var contacts = paths.Ties.Where(t => t.Via is Via.Contact or Via.Load && Levers.Gates(t).OfType<Gate.ByControl>().Any(g => Names.Same(g.Control, control)) && (t.Via == Via.Load || _now.IsClosed(t) != _rest.IsClosed(t)));
            foreach (var contact in contacts.ToList())
            {
                bool IsEnd(TerminalRef t) => _ends.Contains(t) || t.Equals(paths.Feed) || t.Equals(paths.Return);
                if (_now.Way(contact.A, IsEnd, contact) is { } a && _now.Way(contact.B, IsEnd, contact) is { } b && Touches(contact, a, b))
                {
                    Reach = Reach.With(Routes.Of(a.Reverse())).With(new Reach([contact.Part!.Name], [])).With(Routes.Of(b));
                    Behind(a);
                    Behind(b);
                }
            }
        }
    }

    private bool IsFeed(TerminalRef t) => t.Equals(paths.Feed) || _now.IsOutput(t);

    private bool IsReturn(TerminalRef t) => t.Equals(paths.Return);

    private void Way(TerminalRef from, Func<TerminalRef, bool> isEnd)
    {
        if (_now.Way(from, isEnd) is { } way)
        {
            Reach = Reach.With(Routes.Of(way.Reverse()));
            Behind(way);
        }
    }

    // What makes a way: the coil of each relay that has pulled in, the box of each output.
    private void Behind(ImmutableArray<Tie> way)
    {
        foreach (var tie in way)
        {
            foreach (var gate in Levers.Gates(tie).OfType<Gate.ByRelay>().Where(g => g.WhenPulledIn && _relays.Add($"{tie.Part!.Name}/{g.Relay}")))
            {
                var model = paths.Models[tie.Part!.Name];
                foreach (var coil in model.Relays.First(r => r.Name == gate.Relay).Coils)
                {
                    Load(paths.Ties.First(t => t.Part == tie.Part && t.Element?.Name == coil));
                }
            }

            foreach (var end in new[] { tie.A, tie.B }.Where(t => _now.IsOutput(t) && _outputs.Add(t)))
            {
                var box = paths.Models[end.Part].Controller!;
                Box(end.Part, new Expression.And(box.Awake, box.Outputs.First(o => Names.Same(o.Terminal, end.Terminal)).When));
            }
        }
    }

    // The block that reports over a data lead, and its own supply.
    private void Block(TerminalRef data)
    {
        foreach (var (part, model) in paths.Models.Where(m => m.Value.Block is not null))
        {
            if (paths.Way(new(part, model.Block!.Terminal), t => t.Equals(data), t => t.Via is Via.Wire or Via.Joint) is { } way)
            {
                Reach = Reach.With(Routes.Of(way));
                Way(new(part, model.Polarity!.Value.Plus), IsFeed);
                Way(new(part, model.Polarity!.Value.Minus), IsReturn);
            }
        }
    }

    // A contact between feed and ground alone belongs to something else.
    private bool Touches(Tie contact, ImmutableArray<Tie> a, ImmutableArray<Tie> b) =>
        a.Concat(b).Append(contact).SelectMany(t => new[] { t.A, t.B }).Any(_ends.Contains);
}

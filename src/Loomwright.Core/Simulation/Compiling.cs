using System.Collections.Frozen;
using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.Simulation;

/// <summary>Turns the names of one loom into numbers, part by part.</summary>
internal sealed class Compiling
{
    private readonly Loom _loom;
    private readonly ImmutableArray<Model> _models;
    private readonly Dictionary<TerminalRef, int> _nodes = [];
    private readonly ImmutableArray<Point>.Builder _points = ImmutableArray.CreateBuilder<Point>();
    private readonly ImmutableArray<Link>.Builder _links = ImmutableArray.CreateBuilder<Link>();
    private readonly ImmutableArray<Control>.Builder _controls = ImmutableArray.CreateBuilder<Control>();
    private readonly ImmutableArray<Box>.Builder _boxes = ImmutableArray.CreateBuilder<Box>();
    private readonly ImmutableArray<FusePlace>.Builder _fuses = ImmutableArray.CreateBuilder<FusePlace>();
    private readonly ImmutableArray<SightPlace>.Builder _sights = ImmutableArray.CreateBuilder<SightPlace>();
    private readonly ImmutableArray<RelayPlace>.Builder _relays = ImmutableArray.CreateBuilder<RelayPlace>();
    private readonly ImmutableArray<FlasherPlace>.Builder _flashers = ImmutableArray.CreateBuilder<FlasherPlace>();
    private readonly ImmutableArray<BlockPlace>.Builder _blocks = ImmutableArray.CreateBuilder<BlockPlace>();
    private readonly ImmutableArray<int>.Builder _supplies = ImmutableArray.CreateBuilder<int>();
    private readonly ImmutableArray<int>.Builder _charging = ImmutableArray.CreateBuilder<int>();
    private int _lastNode;

    public Compiling(Loom loom)
    {
        _loom = loom;
        _models = [.. loom.Parts.Select(ModelOf)];
        _controls.AddRange(_models.SelectMany(m => m.Controls).DistinctBy(c => Names.Fold(c.Name)));
        NumberPoints();
    }

    public Wiring Finish()
    {
        foreach (var wire in _loom.Wires)
        {
            _links.Add(new Link(wire.Name, "", Node(wire.From), Node(wire.To), new Ohms(Termination.Whole(wire, _loom.Conditions.Ambient).Ohms)) { IsWire = true });
        }

        for (var p = 0; p < _models.Length; p++)
        {
            AddPart(_loom.Parts[p], _models[p]);
        }

        AddJoints();
        foreach (var touch in _loom.Shorts)
        {
            _links.Add(new Link("", "", Node(touch.A), Node(touch.B), new Ohms(touch.Resistance.Ohms)));
        }

        return new Wiring
        {
            Loom = _loom,
            Points = _points.ToImmutable(),
            NodeCount = _lastNode + 1,
            Links = _links.ToImmutable(),
            Controls = _controls.ToImmutable(),
            Boxes = _boxes.ToImmutable(),
            Fuses = _fuses.ToImmutable(),
            Relays = _relays.ToImmutable(),
            Flashers = _flashers.ToImmutable(),
            Blocks = _blocks.ToImmutable(),
            Sights = _sights.ToImmutable(),
            Supplies = [.. _supplies, .. _charging],
            Parts = [.. _loom.Parts.Zip(_models, (part, model) => new PartPlace(part.Name, model))],
            Nodes = _nodes.ToFrozenDictionary(),
        };
    }

    private static Model ModelOf(Part part) => Kinds.Find(part.Kind)?.Build(part) ?? new Model { Terminals = [] };

    // The reference first, then terminals in file order, then points inside parts, then ends that sit on nothing.
    private void NumberPoints()
    {
        if (Reference() is { } reference)
        {
            _nodes.Add(reference, 0);
        }

        for (var p = 0; p < _models.Length; p++)
        {
            foreach (var terminal in _models[p].Terminals)
            {
                Show(new TerminalRef(_loom.Parts[p].Name, terminal.Mark));
            }
        }

        for (var p = 0; p < _models.Length; p++)
        {
            foreach (var element in _models[p].Elements)
            {
                Node(new TerminalRef(_loom.Parts[p].Name, element.From));
                Node(new TerminalRef(_loom.Parts[p].Name, element.To));
            }
        }

        foreach (var end in _loom.Wires.SelectMany(w => new[] { w.From, w.To }).Concat(_loom.Shorts.SelectMany(s => new[] { s.A, s.B })))
        {
            if (!_nodes.ContainsKey(end))
            {
                Show(end);
            }
        }
    }

    private TerminalRef? Reference()
    {
        TerminalRef? bench = null;
        for (var p = 0; p < _models.Length; p++)
        {
            if (_models[p].Supply is { } supply)
            {
                var minus = new TerminalRef(_loom.Parts[p].Name, supply.Minus);
                if (supply.LimitAmps is null)
                {
                    return minus;
                }

                bench ??= minus;
            }
        }

        return bench;
    }

    private void Show(TerminalRef terminal) => _points.Add(new Point(terminal, Node(terminal)));

    private int Node(TerminalRef terminal)
    {
        if (!_nodes.TryGetValue(terminal, out var node))
        {
            _nodes.Add(terminal, node = ++_lastNode);
        }

        return node;
    }

    private void AddPart(Part part, Model model)
    {
        var firstLink = _links.Count;
        foreach (var element in model.Elements)
        {
            var dead = part.Defects.OfType<Defect.Dead>().Any(burnt => burnt.Inside is null || Names.Same(model.ElementOf(burnt.Inside) ?? "", element.Name));
            _links.Add(new Link(part.Name, element.Name, Inside(part, model, element.From), Inside(part, model, element.To), dead ? Ohms.OpenContact : element.Curve)
            {
                Switching = dead || element.Gate is null ? null : SwitchingOf(element.Gate, part, model),
                Off = IsContact(element) && part.Defects.OfType<Defect.Leaks>().LastOrDefault() is { } leaks ? new Ohms(leaks.Resistance.Ohms) : element.Off,
                Cold = dead ? null : element.Cold,
                Fuse = FuseOf(part, model, element, _links.Count),
            });
        }

        int LinkOf(string element)
        {
            var place = model.Elements.ToList().FindIndex(e => Names.Same(e.Name, element));
            return place < 0 ? -1 : firstLink + place;
        }

        if (model.Block is { } block)
        {
            _blocks.Add(BlockOf(part, model, block));
        }

        _relays.AddRange(model.Relays.Select(r => new RelayPlace(part.Name, [.. r.Coils.Select(LinkOf).Where(l => l >= 0)], r)));
        _flashers.AddRange(model.Flashers.Select(f => new FlasherPlace(part.Name, LinkOf(f.Element), f)));
        _charging.AddRange(model.Charging.Select(LinkOf).Where(l => l >= 0));
        foreach (var sight in model.Sights)
        {
            if (LinkOf(sight.Element) is >= 0 and var link)
            {
                _sights.Add(new SightPlace(sight.Name.Length == 0 ? part.Name : $"{part.Name}.{sight.Name}", part.Name, link, sight));
            }
        }

        if (model.Supply is { } supply && LinkOf(supply.Element) is >= 0 and var source)
        {
            _supplies.Add(source);
        }

        if (model.Controller is { } controller)
        {
            var box = BoxOf(part, model, controller, LinkOf);
            _boxes.Add(part.Defects.Contains(new Defect.Dead()) ? box.Dead() : box);
        }
    }

    // A part that is not one point has nothing to sit on; the file's findings tell of it.
    private void AddJoints()
    {
        for (var p = 0; p < _models.Length; p++)
        {
            foreach (var joint in _models[p].Joints)
            {
                var on = new TerminalRef(joint.Part, "");
                if (_points.Any(point => point.Terminal == on))
                {
                    var loose = _loom.Parts[p].Defects.OfType<Defect.Loose>().ToList();
                    Curve curve = loose.Any(l => l.Resistance is null) ? new Open() : loose is [.., { Resistance: { } ohms }] ? new Ohms(ohms.Ohms) : joint.Curve;
                    _links.Add(new Link(_loom.Parts[p].Name, "joint", Node(new TerminalRef(_loom.Parts[p].Name, joint.Terminal)), Node(on), curve) { IsJoint = true });
                }
            }
        }
    }

    private BlockPlace BlockOf(Part part, Model model, ButtonBlock block) => new(
        part.Name,
        Node(new TerminalRef(part.Name, block.Terminal)),
        block.Second is { } second ? Node(new TerminalRef(part.Name, second)) : -1,
        _relays.Count + model.Relays.ToList().FindIndex(r => r.Name == block.Electronics),
        [.. block.Controls.Select(name => _controls.ToList().FindIndex(c => Names.Same(c.Name, name)))]);

    /// <summary>Whether it is a contact that a hand or a coil moves; what leaks or sticks are these.</summary>
    internal static bool IsContact(Element element) => element is { Gate: Gate.ByControl or Gate.ByRelay, Curve: Ohms };

    private int? FuseOf(Part part, Model model, Element element, int link)
    {
        foreach (var fuse in model.Protectors)
        {
            if (Names.Same(fuse.Element, element.Name))
            {
                var button = fuse.ClosesBy is { } name ? _controls.ToList().FindIndex(c => Names.Same(c.Name, name)) : -1;
                _fuses.Add(new FusePlace(part.Name, link, fuse.RatingAmps)
                {
                    Band = fuse.Band,
                    Button = button >= 0 ? (button, _controls[button].Positions.Length - 1) : null,
                    Cycle = fuse.ClosesByItself ? _flashers.Count : null,
                });
                return _fuses.Count - 1;
            }
        }

        return null;
    }

    // A reversed part has its inside turned round between its terminals.
    private int Inside(Part part, Model model, string mark)
    {
        if (part.Defects.Contains(new Defect.Reversed()) && model.Polarity is { } poles)
        {
            mark = Names.Same(mark, poles.Plus) ? poles.Minus : Names.Same(mark, poles.Minus) ? poles.Plus : mark;
        }

        return Node(new TerminalRef(part.Name, mark));
    }

    // Called before the part's own relays, flashers and box are added: their places follow those there are.
    private Switching? SwitchingOf(Gate gate, Part part, Model model)
    {
        switch (gate)
        {
            case Gate.ByControl byControl:
                if (part.Defects.OfType<Defect.Stuck>().FirstOrDefault(s => s.Control is { } control && Names.Same(control, byControl.Control)) is { } still)
                {
                    return new Switching.Fixed(byControl.ClosedIn.Contains(still.At, Names.Comparer));
                }

                var place = _controls.ToList().FindIndex(c => Names.Same(c.Name, byControl.Control));
                return place < 0
                    ? null
                    : new Switching.Contact(place, [.. _controls[place].Positions.Select(p => byControl.ClosedIn.Contains(p, Names.Comparer))]);
            case Gate.ByRelay byRelay:
                if (part.Defects.OfType<Defect.Stuck>().FirstOrDefault(s => s.Control is null) is { } stuck)
                {
                    return new Switching.Fixed(byRelay.WhenPulledIn == Names.Same(stuck.At, Relay.PulledIn));
                }

                var relay = model.Relays.ToList().FindIndex(r => Names.Same(r.Name, byRelay.Relay));
                return relay < 0 ? null : new Switching.Relay(_relays.Count + relay, byRelay.WhenPulledIn);
            case Gate.ByFlasher byFlasher:
                var flasher = model.Flashers.ToList().FindIndex(f => Names.Same(f.Name, byFlasher.Flasher));
                return flasher < 0 ? null : new Switching.Flasher(_flashers.Count + flasher);
            case Gate.Both both:
                return (SwitchingOf(both.One, part, model), SwitchingOf(both.Other, part, model)) switch
                {
                    ({ } one, { } other) => new Switching.Both(one, other),
                    (var one, var other) => one ?? other,
                };
            case Gate.ByOutput byOutput:
                var output = model.Controller?.Outputs.ToList().FindIndex(o => Names.Same(o.Name, byOutput.Output)) ?? -1;
                return output < 0 ? null : new Switching.Output(_boxes.Count, output);
            case Gate.WhileAwake:
                return model.Controller is null ? null : new Switching.Awake(_boxes.Count);
            default:
                return null;
        }
    }

    private Box BoxOf(Part part, Model model, Controller facts, Func<string, int> linkOf)
    {
        ImmutableArray<Expression> rules = [facts.Awake, .. facts.Outputs.Select(o => o.When)];
        var inputs = facts.Inputs.ToList();
        var outputs = facts.Outputs.ToList();
        return new Box(
            part.Name,
            facts,
            Inside(part, model, facts.Supply),
            Inside(part, model, facts.Ground),
            [.. inputs.Select(i => Node(new TerminalRef(part.Name, i.Terminal)))],
            [.. outputs.Select(o => linkOf(o.Element))],
            [.. outputs.Select(o => Node(new TerminalRef(part.Name, o.Terminal)))],
            [.. facts.Lights.Select(l => new LightPlace(
                l.Terminal,
                l.Means,
                l.Means == LightMeans.Input
                    ? inputs.FindIndex(i => Names.Same(i.Terminal, l.Terminal))
                    : outputs.FindIndex(o => Names.Same(o.Terminal, l.Terminal)),
                Node(new TerminalRef(part.Name, l.Terminal))))],
            new Evaluator(rules),
            rules.SelectMany(r => r.NamesUsed()).Distinct(StringComparer.Ordinal).ToFrozenDictionary(n => n, n => inputs.FindIndex(i => Names.Same(i.Name, n)), StringComparer.Ordinal))
        {
            Data = facts.Data is { } data
                ? (Node(new TerminalRef(part.Name, data.Terminal)), data.Second is { } second ? Node(new TerminalRef(part.Name, second)) : -1)
                : (-1, -1),
        };
    }
}

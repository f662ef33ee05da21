using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>
/// What an ohmmeter must show before power, computed on exactly what is connected, supply off: first with every low load
/// unplugged, since a cold filament looks like a short, then with them in.
/// </summary>
internal sealed class Measuring
{
    private readonly Site _site;
    private readonly Steps _steps;
    private readonly ImmutableArray<string> _low;
    private readonly Rig _without;
    private readonly Rig _with;

    public Measuring(Site site, Steps steps)
    {
        (_site, _steps) = (site, steps);
        _low = Unplugged.In(site.Connected, site.Whole);
        _without = new Rig(Unplugged.Of(site.Connected, site.Whole, _low));
        _with = new Rig(site.Connected);
    }

    public void Write()
    {
        if (_site.Line.End is { } end && !_site.HasBack)
        {
            Positions(t => Through(t.Part, t.Control, end));
            return;
        }

        var (feed, back) = (_site.Whole.Feed, _site.Whole.Return);
        if (!_low.IsEmpty)
        {
            _steps.Add(Act.Connect, $"Unplug {string.Join(", ", _low)}; a measurement says when to plug in again.");
        }

        Add($"From the clip for {_site.Mark(feed)} to the clip for {_site.Mark(back)}.", feed, back, isIn: false);
        foreach (var part in _site.NewParts.Where(p => _site.Model(p.Name).Controller is not null))
        {
            var ground = new TerminalRef(part.Name, _site.Model(part.Name).Controller!.Ground);
            Add($"From {_site.Mark(ground)} to the clip for {_site.Mark(back)}: the box's own ground.", ground, back, isIn: false);
        }

        Positions(t => EachPosition(t.Part, t.Control, isIn: false));
        foreach (var load in _site.Line.Loads)
        {
            Load(load, isIn: false);
            var (_, lead) = Sighted.Ends(_site.Whole, Sighted.Tie(_site.Whole, load));
            Add($"From {_site.Mark(lead)} to the clip for {_site.Mark(back)}: its way back alone.", lead, back, isIn: false);
        }

        if (!_low.IsEmpty)
        {
            var plug = $"Plug in {string.Join(", ", _low)}. ";
            foreach (var load in _site.Line.Loads.Where(l => _low.Contains(Sighted.Tie(_site.Whole, l).Part!.Name, Names.Comparer)))
            {
                Load(load, isIn: true, plug);
                plug = "";
            }

            Positions(t => EachPosition(t.Part, t.Control, isIn: true));
        }
    }

    // Every control with a new wire on it whose contacts a meter can follow.
    private void Positions(Action<(Part Part, Control Control)> measure)
    {
        var touched = _site.NewWires.SelectMany(w => new[] { w.From.Part, w.To.Part }).ToHashSet(Names.Comparer);
        foreach (var part in _site.Whole.Loom.Parts.Where(p => touched.Contains(p.Name) && _site.Model(p.Name).Controller is null))
        {
            foreach (var control in _site.Model(part.Name).Controls.Where(c => _site.Model(part.Name).Elements.Any(e => e.Gate is Gate.ByControl g && Names.Same(g.Control, c.Name))))
            {
                measure((part, control));
            }
        }
    }

    // In every position: a lock that works in one can be a dead short one click later. Rest comes last and is left so.
    private void EachPosition(Part part, Control control, bool isIn)
    {
        if (LiveSide(part) is not { } live)
        {
            return;
        }

        var (lead, back) = (MeterCards.InPlace(_site, live), _site.Whole.Return);
        var reads = PositionsOf(part, control).Where(p => !isIn || IsChanged(control, p, live)).ToList();
        foreach (var position in isIn && reads.Count > 0 ? reads.Append(control.Rest) : reads)
        {
            var operation = Move(control, position);
            Add($"{Hand.Does(_site, operation)} From {lead}{_site.Mark(live)} to the clip for {_site.Mark(back)}.", live, back, isIn, operation);
        }
    }

    private void Through(Part part, Control control, TerminalRef end)
    {
        foreach (var position in PositionsOf(part, control))
        {
            var operation = Move(control, position);
            Add($"{Hand.Does(_site, operation)} From the clip for {_site.Mark(_site.Whole.Feed)} to {MeterCards.InPlace(_site, end)}{_site.Mark(end)}.", _site.Whole.Feed, end, isIn: false, operation);
        }
    }

    private IEnumerable<string> PositionsOf(Part part, Control control)
    {
        var used = _site.Line.Do.Where(o => Names.Same(o.Control, control.Name)).Select(o => o.Position);
        var others = control.Positions.Where(p => !Names.Same(p, control.Rest));
        others = Hand.IsOfTheEngine(_site, part) ? others.DistinctBy(p => Hand.IsClosed(_site, part, new(control.Name, p))) : others;
        return (IsLead(part) ? used : others).Append(control.Rest);
    }

    private bool IsChanged(Control control, string position, TerminalRef live)
    {
        Move(control, position);
        var isChanged = ReadsLoad(live, _site.Whole.Return) is not null;
        Move(control, control.Rest);
        return isChanged && !Names.Same(position, control.Rest);
    }

    private Operation.Set Move(Control control, string position)
    {
        var operation = new Operation.Set(control.Name, position);
        _without.Do(operation);
        _with.Do(operation);
        return operation;
    }

    private bool IsLead(Part part) => _site.StandIns.ContainsKey(part.Name);

    // The wired terminal of a control that does not sit on the way back.
    private TerminalRef? LiveSide(Part part)
    {
        var grounded = _site.Whole.Joined(_site.Whole.Return, t => t.Via is Via.Wire or Via.Joint);
        var wired = _site.Model(part.Name).Terminals.Select(t => new TerminalRef(part.Name, t.Mark)).Where(t => Hand.IsWired(_site, t) && !grounded.Contains(t)).ToList();
        var fed = _site.Whole.Joined(_site.Whole.Feed, t => t.Via is Via.Wire or Via.Joint or Via.Fuse);
        return wired.Where(fed.Contains).Concat(wired).Cast<TerminalRef?>().FirstOrDefault();
    }

    private void Load(string load, bool isIn, string before = "")
    {
        var tie = Sighted.Tie(_site.Whole, load);
        var (feed, _) = Sighted.Ends(_site.Whole, tie);
        var from = _site.Line.Output is { } output && _site.Line.Loads.Length == 1 ? output : feed;
        var plain = _site.Model(tie.Part!.Name).Sights.All(s => s is not Sight.Lamp { Law: LightLaw.Led });
        var what = isIn || !_low.Contains(tie.Part.Name, Names.Comparer) ? $"{Spoken.Of(load)} and its way back" : $"the feed of {Spoken.Of(load)}, which is unplugged";
        Add($"{before}From {_site.Mark(from)} to the clip for {_site.Mark(_site.Whole.Return)}: {what}.", from, _site.Whole.Return, isIn, plain: isIn && plain);
    }

    // The low loads behind a way that reads low only because of them; null when it does not.
    private string? ReadsLoad(TerminalRef red, TerminalRef black)
    {
        if (_low.IsEmpty || _with.Ohms(red, black) is not { } ohms || _without.Ohms(red, black)?.Ohms <= ohms.Ohms * 2)
        {
            return null;
        }

        var behind = _with.Now.Seen.Select(s => s.Name).Where(l => _low.Contains(Sighted.Tie(_site.Whole, l).Part!.Name, Names.Comparer)
            && Sighted.Ends(_site.Whole, Sighted.Tie(_site.Whole, l)) is var ends && (_without.Ohms(red, ends.Feed) is { Ohms: < 5 } || _without.Ohms(red, ends.Back) is { Ohms: < 5 })).ToList();
        return string.Join(", ", behind.Count == 0 ? _low : behind.Select(Spoken.Of));
    }

    private Mark Tip(TerminalRef at) => _site.Mark(at) with { Instead = at == _site.Whole.Feed || at == _site.Whole.Return ? MeterCards.Clip : MeterCards.InPlace(_site, at) };

    private void Add(string text, TerminalRef red, TerminalRef black, bool isIn, Operation.Set? done = null, bool plain = false)
    {
        var rig = isIn ? _with : _without;
        var ohms = rig.Ohms(red, black);
        var reads = isIn && ohms is not null ? ReadsLoad(red, black) : null;
        var band = reads is null ? Bands.Of(ohms, plain, _site.FeedSide.IsAcross(red, black), rig.IsThroughElectronics(red, black)) : Bands.OfCold(ohms!.Value);
        var shows = reads is null ? Bands.Words(band) : $"reads {reads}: about {Bands.Shown(ohms!.Value)}, cold ({Bands.Words(band)})";
        _steps.Add(Act.Measure, text, s => s with
        {
            Do = done,
            Unplugged = isIn ? [] : _low,
            Marks = [_site.Mark(red), _site.Mark(black)],
            Meter = MeterCards.Ohms(Tip(red), Tip(black), band),
            Expect = [new Expectation($"{Tip(red)} to {Tip(black)}", shows, band)],
            Cautions = _site.Once.Say(Cautions.OhmsPowerOff),
        });
    }
}

using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench.OnTheBike;

/// <summary>A walk round the whole bike with power on; each step expects what changes with it.</summary>
internal sealed class Tour
{
    private readonly Everything _bike;
    private readonly Steps _steps;
    private readonly Rig _rig;
    private readonly Loom _connected;

    /// <param name="bike">The whole bike.</param>
    /// <param name="steps">What is written to.</param>
    /// <param name="connected">What is connected of it, as the expectations are computed from.</param>
    public Tour(Everything bike, Steps steps, Loom connected)
    {
        (_bike, _steps, _rig, _connected) = (bike, steps, new Rig(connected), connected);
        Frames.Add(_rig.Now);
    }

    public List<Frame> Frames { get; } = [];

    public Frame Now => _rig.Now;

    /// <summary>Whether the starter turns the engine in it.</summary>
    public bool Cranks { get; init; }

    /// <summary>Battery on as the bike's wiring says: the side on the frame last.</summary>
    public void PowerUp(bool withKey = true)
    {
        _steps.Add(Act.PowerUp, $"Battery on: {_bike.Mark(_bike.Paths.Feed)} first, {_bike.Mark(_bike.Paths.Return)} last.", s => s with
        {
            Marks = [_bike.Mark(_bike.Paths.Feed), _bike.Mark(_bike.Paths.Return)],
            PowerOn = true,
            Expect = All(),
            Cautions = _bike.Once.Say([Cautions.Rings, Cautions.HotOnTheBike, .. Risky.Cautions(_connected, _rig.Now)]),
        });
        foreach (var key in withKey ? _bike.Key : [])
        {
            Do(key, Act.PowerUp);
        }
    }

    public void PowerDown()
    {
        foreach (var key in _bike.Key.Reverse().Where(k => !IsAtRest(k.Control)))
        {
            Do(_bike.Back(key.Control), Act.PowerDown);
        }

        _steps.Add(Act.PowerDown, $"Battery off: {_bike.Mark(_bike.Paths.Return)} first.", s => s with { Marks = [_bike.Mark(_bike.Paths.Return)], PowerOn = true });
    }

    /// <param name="operation">What is moved.</param>
    /// <param name="act">The act it belongs to.</param>
    /// <param name="text">What to do, where a control stands for more than a hand does.</param>
    /// <param name="cautions">What to mind beside what then runs.</param>
    public void Do(Operation.Set operation, Act act = Act.Operate, string? text = null, ImmutableArray<string> cautions = default)
    {
        var before = _rig.Now;
        var frame = _rig.Do(operation);
        Frames.Add(frame);
        _steps.Add(act, text ?? Text(operation), s => s with
        {
            Do = operation,
            PowerOn = true,
            Expect = Changed(before, frame),
            Cautions = [.. _bike.Once.Say([.. cautions.IsDefault ? [] : cautions, .. Risky.Cautions(_connected, frame)]), .. InGear(operation, frame)],
        });
    }

    // Said anew at each such step: what it is about to do to the bike is seen at no other.
    private ImmutableArray<string> InGear(Operation.Set operation, Frame frame) =>
        Cranks && (Senses(operation.Control, "neutral") || Senses(operation.Control, "clutch")) && frame.Controls.Any(c => !c.AtRest && Senses(c.Control, "neutral")) ? [Cautions.InGear] : [];

    private bool Senses(string control, string what) =>
        _bike.Loom.Part(control) is { Kind: "sensor switch" } part && part.Settings.Word("senses") is { } word && Names.Same(word, what);

    /// <summary>Everything that is away from rest goes back, buttons first; what a press began and only a press ends is pressed once more.</summary>
    public void BackToKey()
    {
        Press = null;
        foreach (var control in _rig.Now.Controls.Where(c => !c.AtRest && !_bike.Key.Any(k => Names.Same(k.Control, c.Control))).OrderBy(c => !_bike.Control(c.Control).Momentary).ToList())
        {
            Do(_bike.Back(control.Control));
        }

        foreach (var key in _bike.Key.Where(k => _rig.Now.Controls.Any(c => Names.Same(c.Control, k.Control) && !Names.Same(c.Position, k.Position))))
        {
            Do(key);
        }

        if (_rig.Now.Controllers.Any(c => !c.Remembers.IsEmpty))
        {
            foreach (var key in _bike.Key)
            {
                Do(_bike.Back(key.Control));
                Do(key);
            }
        }
    }

    /// <summary>What is made for seconds: let go of and pressed anew for every reading; null while nothing such is on.</summary>
    public Operation.Set? Press { get; private set; }

    /// <summary>From here on readings are taken with what ends it pressed for each, where something made for seconds is on.</summary>
    /// <param name="line">What was done to bring it on.</param>
    public void Briefly(Line line)
    {
        Press = IsForSecondsOn(_rig.Now) ? line.Do.Reverse().FirstOrDefault(o => !IsForSecondsOn(new Rig(_connected).Play(line.Do.Append(_bike.Back(o.Control)))[^1])) : null;

        bool IsForSecondsOn(Frame frame) => frame.Seen.Any(s => Line.IsOn(s) && Risky.IsForSeconds(_connected.Part(s.Part)!));
    }

    public void Volts(string text, TerminalRef red, TerminalRef black, string what, Band band, params ImmutableArray<Expectation> more)
    {
        if (Press is { } press)
        {
            Do(_bike.Back(press.Control));
            Frames.Add(_rig.Do(press));
        }

        var tips = $"red on {_bike.Mark(red)}, black on {_bike.Mark(black)}.";
        _steps.Add(Act.Operate, Press is { } held ? $"{text}: both clips on first, {tips} {Text(held)} Read it, ten seconds at most." : $"{text}: {tips}", s => s with
        {
            Do = Press,
            Marks = [_bike.Mark(red), _bike.Mark(black)],
            PowerOn = true,
            Meter = MeterCards.Volts(_bike.Mark(red), _bike.Mark(black)),
            Expect = [new Expectation(what, Bands.Words(band), band), .. more],
            Cautions = _bike.Once.Say(Cautions.LiveProbe),
        });
    }

    /// <summary>Reads what is lost along a stretch; nothing where both ends are one terminal.</summary>
    public void Drop(string text, TerminalRef red, TerminalRef black, string what)
    {
        if (!red.Equals(black) && Read(red, black) is { } read)
        {
            (red, black, var lost) = MeterCards.Upright(red, black, read);
            Volts(text, red, black, what, Bands.OfDrop(lost));
        }
    }

    /// <summary>What a meter shows now; null when a terminal is not there.</summary>
    public Quantities.Voltage? Read(TerminalRef red, TerminalRef black) => _rig.Volts(red, black);

    public Frame Wait(TimeSpan time)
    {
        var frame = _rig.Do(new Operation.Wait(time));
        Frames.Add(frame);
        return frame;
    }

    private bool IsAtRest(string control) => _rig.Now.Controls.First(c => Names.Same(c.Control, control)).AtRest;

    private string Text(Operation.Set operation)
    {
        var control = _bike.Control(operation.Control);
        return !control.Momentary ? $"Set {control.Name} to {operation.Position}."
            : Names.Same(operation.Position, control.Rest) ? $"Let go of {control.Name}."
            : $"Press {control.Name} and hold it.";
    }

    private ImmutableArray<Expectation> All() => [.. _rig.Now.Seen.Where(s => !IsOff(s)).Select(s => new Expectation(s.Name, Words.Of(s.Symbol))).DefaultIfEmpty(new Expectation("everything", "dark and quiet"))];

    private static ImmutableArray<Expectation> Changed(Frame before, Frame after) =>
    [
        .. after.Seen.Where(s => before.Seen.First(b => b.Name == s.Name).Symbol != s.Symbol).Select(s => new Expectation(s.Name, Words.Of(s.Symbol)))
            .Concat(after.Fuses.Where(f => f.State == FuseState.Blown).Select(f => new Expectation(f.Part, "blows")))
            .DefaultIfEmpty(new Expectation("everything else", "as before")),
    ];

    private static bool IsOff(Seen seen) => seen.Symbol is Symbol.Dark or Symbol.Silent or Symbol.Rests;
}

using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Simulation;

/// <summary>How a rig is set up.</summary>
public sealed record RigOptions
{
    /// <summary>The design without the mistake: full light is measured there. Null: the loom itself.</summary>
    public Loom? Healthy { get; init; }

    /// <summary>False leaves a lamp's first milliseconds out: only to show what they are for.</summary>
    internal bool ColdStart { get; init; } = true;
}

/// <summary>
/// A bike or bench set-up one can operate: power connected, every control at rest, then one operation after another,
/// each settled before the next. Its own clock; the same operations give the same frames. Not for two threads at once.
/// </summary>
public sealed class Rig
{
    private readonly Wiring _wiring;
    private readonly Settler _settler;
    private readonly Watching _watching;
    private Settled _settled;
    private TimeSpan _time;

    /// <summary>Connects power to a loom.</summary>
    public Rig(Loom loom, RigOptions? options = null)
    {
        options ??= new RigOptions();
        _wiring = Wiring.Of(loom);
        _settler = new Settler(_wiring, options.ColdStart);
        _watching = new Watching(_wiring, _settler, FullLight.Of(options.Healthy ?? loom));
        _settled = _settler.Settle(_wiring.Start());
        Now = _watching.Frame(_settled, _time, PowerOn, _settled.Events);
    }

    private const string PowerOn = "power connected";

    /// <summary>The bike as it now is.</summary>
    public Frame Now { get; private set; }

    /// <summary>Does one operation; see <see cref="Play"/> for every frame on the way.</summary>
    /// <returns>The frame at its end. An operation that cannot be done (<see cref="Cannot"/>) changes nothing and says so among the events.</returns>
    public Frame Do(Operation operation) => Steps(operation).Last();

    /// <summary>Power off, memory cleared, controls at rest, fuses whole, power on.</summary>
    public Frame Reset()
    {
        _time = TimeSpan.Zero;
        return Show(_settler.Settle(_wiring.Start()), PowerOn);
    }

    /// <summary>From reset, in the given order: the frame at power-on, then one for every settled step, run-outs included.</summary>
    public IReadOnlyList<Frame> Play(IEnumerable<Operation> operations)
    {
        var frames = new List<Frame> { Reset() };
        foreach (var operation in operations)
        {
            frames.AddRange(Steps(operation));
        }

        return frames;
    }

    /// <summary>Why an operation cannot be done, with what could be; null when it can.</summary>
    public string? Cannot(Operation operation) => operation switch
    {
        Operation.Set set when Find(set.Control) is not { } => NoControl(set.Control),
        Operation.Set set when Wiring.PlaceOf(_wiring.Controls[Find(set.Control)!.Value], set.Position) is null =>
            $"{set.Control} has no position {set.Position}; it has {string.Join(", ", _wiring.Controls[Find(set.Control)!.Value].Positions)}",
        Operation.Tap tap when Find(tap.Control) is not { } => NoControl(tap.Control),
        Operation.Tap tap when !_wiring.Controls[Find(tap.Control)!.Value].Momentary => $"{tap.Control} stays where it is put: say which position",
        Operation.Wait { Time.Ticks: < 0 } => "time does not run back",
        _ => null,
    };

    /// <summary>Volts between two terminals in the state now, red against black, through a 10 MΩ meter that is itself part of the circuit; null when a terminal is not there.</summary>
    public Voltage? Volts(TerminalRef red, TerminalRef black) => Meter.Volts(_wiring, _settled.State, red, black);

    /// <summary>Ohms between two terminals with the supply off and the controls as they stand; null when a terminal is not there or the meter shows no path (above 40 MΩ).</summary>
    public Resistance? Ohms(TerminalRef red, TerminalRef black) => Meter.Ohms(_wiring, _settled.State, red, black);

    /// <summary>Whether no path is computed but for the inside of a load controller or a button block, which nobody knows; see <see cref="Ohms"/>.</summary>
    internal bool IsThroughElectronics(TerminalRef red, TerminalRef black) => Meter.IsThroughElectronics(_wiring, _settled.State, red, black);

    /// <summary>Whether a meter would beep: power off, below 30 Ω.</summary>
    public bool Continuity(TerminalRef red, TerminalRef black) => Ohms(red, black) is { Ohms: < Meter.BeepsBelowOhms };

    private IEnumerable<Frame> Steps(Operation operation)
    {
        if (Cannot(operation) is { } reason)
        {
            yield return Now = Now with { Step = reason, Events = [reason] };
            yield break;
        }

        switch (operation)
        {
            case Operation.Set set:
                yield return Move(Find(set.Control)!.Value, set.Position, "{0} → {1}");
                break;
            case Operation.Tap tap:
                var control = _wiring.Controls[Find(tap.Control)!.Value];
                yield return Move(Find(tap.Control)!.Value, control.Positions.First(p => !Names.Same(p, control.Rest)), "{0} pressed");
                yield return Move(Find(tap.Control)!.Value, control.Rest, "{0} let go");
                break;
            case Operation.Wait wait:
                var start = _time;
                foreach (var (after, settled) in Time.Pass(_settler, _settled, wait.Time))
                {
                    _time = start + after;
                    yield return Show(settled, after == wait.Time ? $"{Words(wait.Time)} later" : $"after {Words(after)} a time runs out");
                }

                break;
        }
    }

    private Frame Move(int control, string position, string words)
    {
        var facts = _wiring.Controls[control];
        var place = Wiring.PlaceOf(facts, position)!.Value;
        return Show(
            _settler.Settle(Time.Moved(_settled.State, control, place)),
            string.Format(System.Globalization.CultureInfo.InvariantCulture, words, facts.Name, facts.Positions[place]));
    }

    private Frame Show(Settled settled, string step)
    {
        _settled = settled;
        return Now = _watching.Frame(settled, _time, step, settled.Events);
    }

    private int? Find(string control)
    {
        for (var c = 0; c < _wiring.Controls.Length; c++)
        {
            if (Names.Same(_wiring.Controls[c].Name, control))
            {
                return c;
            }
        }

        return null;
    }

    private string NoControl(string name) => _wiring.Controls.IsEmpty
        ? $"nothing here is called {name}: there is nothing to operate"
        : $"no switch or button is called {name}; there are {string.Join(", ", _wiring.Controls.Select(c => c.Name))}";

    private static string Words(TimeSpan time) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.###} s");
}

using System.Globalization;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Browser.Tests;

/// <summary>What is on the bench at a stage, with a fault in it until it is mended: it does what the steps ask and shows what such a bench shows.</summary>
internal sealed class FaultyBench(Stage stage, Fault fault)
{
    private readonly List<Operation> _done = [];
    private bool _mended;

    /// <summary>Where a wire wrongly sits, as found by looking there.</summary>
    public string Sits => fault is Fault.Moved moved ? $"{moved.Wire} sits on {moved.To}" : fault.ToString();

    /// <summary>The fault is found and put right.</summary>
    public void Mend() => _mended = true;

    /// <summary>Does a step; true when everything is as it expects. Readings come by what they are of, what is seen otherwise by its label on the page.</summary>
    public (bool AsExpected, Dictionary<string, string> Readings, Dictionary<string, string> Otherwise) Do(Step step)
    {
        if (step.Act == Act.PowerUp && !step.PowerOn)
        {
            _done.Clear();
        }

        _done.AddRange(step.Do is { } set ? [set] : step.Wait is { } wait ? [new Operation.Wait(wait)] : []);
        var (rig, healthy) = (After(_done), After(_done, mended: true));
        var readings = step.Expect.Where(e => e.IsRead).ToDictionary(e => e.What, e => Read(rig, step.Meter, e.Band!));
        var outside = step.Expect.Any(e => e.IsRead && !Inside(readings[e.What], e.Band!));
        var otherwise = step.PowerOn ? Otherwise(rig, healthy) : [];
        return (!outside && (otherwise.Count == 0 || step.Meter is not null), readings, otherwise);
    }

    /// <summary>What stands otherwise than it should after doing what a question of the search names, from power on.</summary>
    public Dictionary<string, string> Looked(string done) => Otherwise(After(Read(done)), After(Read(done), mended: true));

    /// <summary>Volts as a question of the search asks for them.</summary>
    public string Volts(string done, string red, string black) => (After(Read(done)).Volts(At(red), At(black))?.Volts ?? 0).ToString("0.00", CultureInfo.InvariantCulture);

    private Rig After(IEnumerable<Operation> done, bool mended = false)
    {
        var rig = new Rig(mended || _mended ? stage.Connected : Patch.Apply(stage.Connected, fault), new RigOptions { Healthy = stage.Connected });
        foreach (var operation in done)
        {
            rig.Do(operation);
        }

        return rig;
    }

    // Without a card of its own a step reads the amps that go through the supply.
    private static string Read(Rig rig, MeterCard? card, Band band)
    {
        var shows = card switch
        {
            { Dial: Dial.Ohms } => rig.Ohms(card.RedTip.Terminal, card.BlackTip.Terminal)?.Ohms,
            { Dial: Dial.Volts } => rig.Volts(card.RedTip.Terminal, card.BlackTip.Terminal)?.Volts,
            _ => band.Unit == Unit.Amp ? rig.Now.Phases.Max(p => p.Supply.Amps) : band.Computed,
        };
        return shows?.ToString("0.0##", CultureInfo.InvariantCulture) ?? "OL";
    }

    private static bool Inside(string reading, Band band) =>
        reading == "OL" ? band.Most is null : double.Parse(reading, CultureInfo.InvariantCulture) is var value && !(value < band.Least) && !(value > band.Most);

    private static Dictionary<string, string> Otherwise(Rig rig, Rig healthy)
    {
        var seen = rig.Now.Seen.Zip(healthy.Now.Seen).Where(p => p.First.Symbol != p.Second.Symbol).Select(p => (Words.Name(p.First.Name), Words.Of(p.First.Symbol)));
        var lights = rig.Now.Controllers.Zip(healthy.Now.Controllers).SelectMany(p => p.First.Lights.Zip(p.Second.Lights)
            .Where(l => Words.OfLight(l.First.Symbol) != Words.OfLight(l.Second.Symbol)).Select(l => ($"{p.First.Part}.{l.First.Terminal}", Words.OfLight(l.First.Symbol))));
        return seen.Concat(lights).ToDictionary(s => s.Item1, s => s.Item2);
    }

    private static IEnumerable<Operation> Read(string done) => done == "power connected" ? []
        : done.Split(", ").Select(Operation (move) => move.Split(" → ") is [var control, var position]
            ? new Operation.Set(control, position)
            : new Operation.Wait(TimeSpan.FromSeconds(double.Parse(move.Split(' ')[0], CultureInfo.InvariantCulture))));

    private TerminalRef At(string point) => stage.Connected.Wires.SelectMany(w => new[] { w.From, w.To }).First(t => Names.Same(t.ToString(), point));
}

using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Drawing;
using Loomwright.Faults;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;
using Loomwright.Web.Check;

namespace Loomwright.Web.Try;

/// <summary>
/// One person operating one bike on screen. What is shown is always the outcome of what was done since power came on, with the
/// mistake in or not; undo and the mistake are a fresh start and the same doings again.
/// </summary>
public sealed class Session
{
    private readonly List<List<Operation>> _done = [];
    private Rig _rig;
    private Rig? _healthy;
    private bool _flashOn = true;
    private IReadOnlyList<Mistake>? _catalogue;
    private IReadOnlyList<Found>? _findings;

    private Session(Bike bike, Loom loom)
    {
        Bike = bike;
        Loom = loom;
        _rig = bike.Start();
        Lines = bike.LoadLines;
        View = Look();
    }

    /// <summary>Told whenever something else is to be shown.</summary>
    public Action? Changed { get; set; }

    public Bike Bike { get; }

    /// <summary>The design as the file has it.</summary>
    public Loom Loom { get; }

    /// <summary>The way of every lamp and horn from plus to minus, as the file draws it.</summary>
    public IReadOnlyList<LoadLine> Lines { get; }

    /// <summary>What a hand can operate.</summary>
    public IReadOnlyList<Control> Controls => Bike.Controls;

    /// <summary>Every mistake that can be put in.</summary>
    public IReadOnlyList<Mistake> Catalogue => _catalogue ??= [.. Bike.Faults().Select(new MistakeWords(Loom).Of)];

    /// <summary>What the check says, gravest first.</summary>
    public IReadOnlyList<Found> Findings => _findings ??= Found.Of(Bike);

    /// <summary>The staged bench plan.</summary>
    public Plan Plan => Bike.ProofSoFar?.Plan ?? Bike.Plan();

    /// <summary>The mistake that is in, or null.</summary>
    public Mistake? Mistake { get; private set; }


    /// <summary>What would burn or break now, in words, the worst first.</summary>
    public IReadOnlyList<string> Harm => Bike.Harm(_rig.Now, Mistake?.Fault);

    /// <summary>What is to be shown now.</summary>
    public Shown View { get; private set; }

    public bool CanUndo => _done.Count > 0;

    /// <summary>True while nobody is to be told what the mistake is.</summary>
    public bool IsHidden { get; set; }

    /// <summary>Names of the wires the mistake sits on; none while it is hidden.</summary>
    public IReadOnlyList<string> Touched => Mistake is null || IsHidden ? [] : Spot.Wires(Mistake.Fault, Loom);

    /// <summary>Starts with everything at rest; null when nothing of the design could be read.</summary>
    public static Session? Start(Bike bike) => bike.Loom is { } loom ? new(bike, loom) : null;

    /// <summary>The same doings and the same mistake at the bike as its file now has it, as far as they are still there; null when nothing of it could be read.</summary>
    public Session? GoOn(Bike bike)
    {
        var next = Start(bike);
        if (next is null)
        {
            return null;
        }

        next._flashOn = _flashOn;
        next._done.AddRange(_done.Where(gesture => gesture.All(o => next._rig.Cannot(o) is null)));
        next.Mistake = Mistake is null ? null : next.Catalogue.FirstOrDefault(m => m.Fault == Mistake.Fault);
        next.Anew();
        return next;
    }

    /// <summary>What the check says with a mistake in that it does not say without it; may take a second.</summary>
    public IReadOnlyList<Finding> FindingsWith(Mistake? mistake) => mistake is null ? [] : Bike.Check(mistake.Fault);

    /// <summary>Does one thing at the bike.</summary>
    public void Do(Operation operation)
    {
        if (Ends(operation))
        {
            _done[^1].Add(operation);
        }
        else
        {
            _done.Add([operation]);
        }

        _rig.Do(operation);
        _healthy?.Do(operation);
        Show();
    }

    /// <summary>Takes the last thing done back; a press and its letting go are one.</summary>
    public void Undo()
    {
        if (CanUndo)
        {
            _done.RemoveAt(_done.Count - 1);
            Anew();
        }
    }

    /// <summary>Every control at rest, fuses whole, nothing remembered: as when power first comes on.</summary>
    public void Rest()
    {
        _done.Clear();
        Anew();
    }

    public void PutIn(Mistake mistake)
    {
        Mistake = mistake;
        Anew();
    }

    public void TakeOut()
    {
        Mistake = null;
        Anew();
    }

    /// <summary>Starts anew and does what the stage does up to and with a step, on the whole bike.</summary>
    public void Show(Stage stage, Step step)
    {
        Rest();
        foreach (var done in stage.Steps.TakeWhile(s => s != step).Append(step))
        {
            if (done.Do is { } operation)
            {
                Do(operation);
            }

            if (done.Wait is { } time)
            {
                Do(new Operation.Wait(time));
            }
        }
    }

    /// <summary>Chooses the lit or the dark half of a flash.</summary>
    public void ShowFlash(bool on)
    {
        _flashOn = on;
        Show();
    }

    private void Anew()
    {
        _rig = Bike.Start(Mistake?.Fault);
        _healthy = Mistake is null ? null : Bike.Start(null);
        foreach (var operation in _done.SelectMany(gesture => gesture))
        {
            _rig.Do(operation);
            _healthy?.Do(operation);
        }

        Show();
    }

    private void Show()
    {
        View = Look();
        Changed?.Invoke();
    }

    private Shown Look() => new(Loom, Mistake is null ? Loom : Patch.Apply(Loom, Mistake.Fault), _rig.Now, _healthy?.Now, _flashOn);

    private bool Ends(Operation operation) =>
        operation is Operation.Set let && _done.Count > 0 && _done[^1] is [Operation.Set pressed]
        && Names.Same(pressed.Control, let.Control)
        && Controls.FirstOrDefault(c => Names.Same(c.Name, let.Control)) is { Momentary: true } control
        && Names.Same(let.Position, control.Rest);
}

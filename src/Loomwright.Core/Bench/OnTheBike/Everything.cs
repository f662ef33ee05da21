using System.Collections.Immutable;
using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench.OnTheBike;

/// <summary>The whole bike as the stages of its plan look at it.</summary>
internal sealed class Everything
{
    public Everything(Loom loom, Survey survey)
    {
        Loom = loom;
        Survey = survey;
        Aside = new Aside(loom, survey.Paths);
        Key = survey.Boxes.IsEmpty ? survey.Loads.Where(l => l.Do.Length > 0).Select(l => l.Do[0]).Where(o => !survey.IsMomentary(o.Control)).Take(1).ToImmutableArray() : [.. survey.Boxes[0].Do.Where(o => !survey.IsMomentary(o.Control))];
        Engine = loom.Parts.Any(p => Paths.Models.GetValueOrDefault(p.Name) is { Charging.IsEmpty: false })
            ? survey.Controls.FirstOrDefault(c => c.Positions.Length > 2 && loom.Parts.Any(p => Paths.Models.GetValueOrDefault(p.Name) is { Charging.IsEmpty: false } m && m.Controls.Any(x => Names.Same(x.Name, c.Name))))
            : null;
    }

    public Loom Loom { get; }

    public Survey Survey { get; }

    public Paths Paths => Survey.Paths;

    /// <summary>What wakes the bike.</summary>
    public ImmutableArray<Operation.Set> Key { get; }

    /// <summary>The control that stands for the engine's speed; null when nothing charges.</summary>
    public Control? Engine { get; }

    /// <summary>What is off until its own stage.</summary>
    public Aside Aside { get; }

    /// <summary>The cautions said so far.</summary>
    public Once Once { get; } = new();

    public Mark Mark(TerminalRef at) => new(at, Paths.Terminal(at)?.Name);

    public Control Control(string name) => Survey.Controls.First(c => Names.Same(c.Name, name));

    public Operation.Set Back(string control) => new(control, Control(control).Rest);

    /// <summary>A stage of steps, with the fuses that stay unless a small one is said.</summary>
    /// <param name="connected">What is connected of the bike in it.</param>
    /// <param name="fuseAmps">The small fuse, or null.</param>
    public Stage Stage(int number, string title, string why, Steps steps, IReadOnlyList<Frame> frames, Loom connected, double? fuseAmps = null)
    {
        var draws = new Current(frames.SelectMany(f => f.Phases).Select(p => p.Supply.Amps).DefaultIfEmpty().Max());
        var main = Supplied.ProtectorsAt(Paths).MaxBy(p => p.Settings.Number("rating") ?? 0);
        var final = main?.Settings.Number("rating") is { } rating ? new Current(rating) : (Current?)null;
        var fuse = fuseAmps is { } amps
            ? new FirstFuse(new Current(amps), BladeFuses.Colour(amps), final)
            : new FirstFuse(final ?? new Current(0), main is not null && Fetching.IsFuse(main) ? BladeFuses.Colour(final!.Value.Amps) : "", final);
        return new Stage(number, title, why, draws, fuse, steps.Finish(), connected);
    }
}

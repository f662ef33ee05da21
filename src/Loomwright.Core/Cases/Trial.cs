using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.ProjectFile;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Cases;

/// <summary>A told case held against the simulation of its circuit.</summary>
/// <param name="Case">As told.</param>
/// <param name="Compared">Everything that was seen, in the order told.</param>
/// <param name="Problems">Names and words of the case that mean nothing in this circuit.</param>
internal sealed record Trial(Case Case, ImmutableArray<Compared> Compared, ImmutableArray<Problem> Problems)
{
    /// <summary>The symptom is predicted: the circuit with the cause shows all that was seen, and the healthy one does not.</summary>
    public bool Agrees => Problems.IsEmpty && Compared.All(c => c.WithCause.Holds) && Compared.Any(c => !c.Healthy.Holds);

    /// <summary>Plays what was done on the healthy circuit and on the one with the cause in it.</summary>
    public static Trial Of(Loom healthy, Case told)
    {
        var problems = new List<Problem>();
        var compared = ImmutableArray.CreateBuilder<Compared>();
        var causes = told.Cause.Select(id => Fault(id, healthy, problems)).OfType<Fault>().ToImmutableArray();
        foreach (var sighting in told.Saw)
        {
            var mended = sighting.Mended.Select(id => Fault(id, healthy, problems)).OfType<Fault>();
            var faulty = causes.Except(mended).Aggregate(healthy, Patch.Apply);
            var well = Played(new Rig(healthy), sighting, problems);
            var ill = Played(new Rig(faulty, new RigOptions { Healthy = healthy }), sighting, []);
            foreach (var (what, word) in sighting.See.SelectMany(s => s.Words.Select(w => (s.What, w))))
            {
                if (Observed.Shown(what, word, well) is { } inHealthy && Observed.Shown(what, word, ill) is { } withCause)
                {
                    compared.Add(new Compared(sighting, what, word, inHealthy, withCause));
                }
                else
                {
                    problems.Add(new Problem(what, "nothing here is called so", "write a part, part.element, a wire, two terminals with to between them, or “any of” and several of these"));
                }
            }
        }

        return new Trial(told, compared.ToImmutable(), [.. problems.Distinct()]);
    }

    private static Fault? Fault(string id, Loom loom, List<Problem> problems)
    {
        var read = FaultText.Read(id, loom);
        if (read.Problem is { } problem)
        {
            problems.Add(problem);
        }

        return read.Fault;
    }

    private static Rig Played(Rig rig, Sighting sighting, List<Problem> problems)
    {
        foreach (var written in sighting.Do)
        {
            var operation = Operation(written);
            if ((operation is null ? "it is no operation" : rig.Cannot(operation)) is { } trouble)
            {
                problems.Add(new Problem(written, trouble, "write “control=position” or “wait 3 s”"));
            }
            else
            {
                rig.Do(operation!);
            }
        }

        return rig;
    }

    /// <summary>Reads one operation; null when it is none.</summary>
    public static Operation? Operation(string written) =>
        written.Split('=', 2) is [var control, var position] ? new Operation.Set(control.Trim(), position.Trim())
        : written.StartsWith("wait ", StringComparison.Ordinal) && Typed.Read(written[5..], Unit.Second) is Typed.Quantity { Si: > 0 and < 86_400 } time
            ? new Operation.Wait(TimeSpan.FromSeconds(time.Si))
        : null;
}

/// <summary>One thing told beside what both circuits show.</summary>
/// <param name="Word">As told: a symbol or a band.</param>
internal sealed record Compared(Sighting Sighting, string What, string Word, Shown Healthy, Shown WithCause);

/// <summary>What a circuit shows there, in words, and whether that is what was told.</summary>
internal sealed record Shown(string Words, bool Holds);

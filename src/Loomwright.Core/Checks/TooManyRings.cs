using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>More rings on a stud than find room on it, or than is good where nothing is said.</summary>
internal static class TooManyRings
{
    // Under one nut (common practice, no source).
    private const int Usual = 4;

    public static Rule Rule { get; } = new(
        "too-many-rings",
        Severity.Note,
        Severity.Look,
        "More wires on a ground stud than rings find room on it.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. from stud in study.Loom.Parts
           where stud.Kind == "ground stud"
           let stated = stud.Settings.Number("rings")
           let wires = study.Loom.Wires.Count(w => Names.Same(w.From.Part, stud.Name) || Names.Same(w.To.Part, stud.Name))
           where wires > (stated ?? Usual)
           select new Finding(
               Rule.Code,
               stated is null ? Severity.Note : Severity.Look,
               new Subject.OfPart(stud.Name),
               stated is null ? "{wires} wires end on {stud}, and the file does not say how many rings find room there." : "{wires} wires end on {stud}, which has room for {room} rings.",
               "A high stack of rings works loose, and all that is on it fails together. By custom not more than {usual} go under one nut.",
               stated is null
                   ? "Say under rings how many find room, as on a bar with many screws. If it is one bolt, spread them over two, or join small ones in one ring first."
                   : "Take some of them to another stud or to a ground bar with more screws.",
               [
                   Evidence.Of("stud", stud.Name),
                   Evidence.Of("wires", wires),
                   Evidence.Of("room", (stated ?? Usual).ToString("0", CultureInfo.InvariantCulture)),
                   Evidence.Of("usual", Usual),
               ]),
    ];
}

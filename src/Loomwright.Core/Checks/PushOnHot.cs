using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Sizing;

namespace Loomwright.Checks;

/// <summary>A flat push-on terminal that carries more than its width usually does.</summary>
internal static class PushOnHot
{
    public static Rule Rule { get; } = new(
        "push-on-hot",
        Severity.Note,
        Severity.Note,
        "A push-on terminal that carries more than one of its width usually does.",
        Look);

    private static ImmutableArray<Finding> Look(Study study) =>
    [
        .. from end in study.Ends
           let tab = Tab.Of(end.End)
           where tab is not null
           let place = study.Loom.Wires.IndexOf(end.Wire)
           let moment = study.Tried.Moments.MaxBy(m => Tried.Amps(m, place))
           let amps = Tried.Amps(moment, place)
           where amps > tab.MostAmps
           select new Finding(
               Rule.Code,
               Severity.Note,
               new Subject.OfTerminal(end.At),
               "At {terminal} the push-on terminal of {wire} carries {amps} with {when}; one {width} wide usually carries {least} to {most}.",
               "It warms, its spring goes soft, and then it warms more: brown plastic round a plug is how that ends. The amps are practice (public summary), not a limit of a standard.",
               "Take a wider terminal or a ring. Or take part of the load over a second terminal.",
               [
                   Evidence.Of("wire", end.Wire.Name),
                   Evidence.Of("terminal", Called.At(study.Paths, end.At)),
                   Evidence.Of("amps", new Current(amps)),
                   Evidence.Of("when", moment.InWords),
                   Evidence.Of("width", FormattableString.Invariant($"{tab.WidthMillimetres:0.#} mm")),
                   Evidence.Of("least", new Current(tab.LeastAmps).Printed),
                   Evidence.Of("most", new Current(tab.MostAmps).Printed),
               ]),
    ];
}

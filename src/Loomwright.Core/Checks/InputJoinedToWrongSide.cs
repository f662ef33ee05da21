using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;

namespace Loomwright.Checks;

/// <summary>An input whose switch joins it to plus although it wants ground, or the reverse.</summary>
internal static class InputJoinedToWrongSide
{
    public static Rule Rule { get; } = new(
        "input-joined-to-wrong-side",
        Severity.Look,
        Severity.Look,
        "A switch to plus on an input that wants ground, or the reverse.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        if (paths.Source is null)
        {
            return [];
        }

        var plus = paths.Joined(paths.Plus, t => t.IsFixed);
        var minus = paths.Joined(paths.Minus, t => t.IsFixed);
        var rails = plus.Concat(minus).ToHashSet();
        return
        [
            .. from box in paths.Built
               where box.Model.Controller is not null
               from input in box.Model.Controller!.Inputs
               where input.Button is null
               let at = new TerminalRef(box.Part.Name, input.Terminal)
               let near = paths.Joined(at, t => t.IsFixed || t.Via is Via.Contact or Via.Relay, rails)
               let joins = (Plus: near.Overlaps(plus), Minus: near.Overlaps(minus))
               where input.ActiveAtGround ? joins is (true, false) : joins is (false, true)
               select Found(paths, at, input),
        ];
    }

    private static Finding Found(Paths paths, TerminalRef at, Input input) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfTerminal(at),
        "{terminal} counts as on when it is joined to {wanted}; as drawn it can only be joined to {joined}.",
        "At rest the box itself holds this input at {joined}. A switch that joins it to {joined} changes nothing, so the box never notices it.",
        "Take the other end of the switch from {joined} to {wanted}. If the manual says that this input wants {joined}, write active: {joined} instead.",
        [
            Evidence.Of("terminal", Called.At(paths, at)),
            Evidence.Of("wanted", input.ActiveAtGround ? "ground" : "plus"),
            Evidence.Of("joined", input.ActiveAtGround ? "plus" : "ground"),
        ]);
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>A button block whose ground lead leads nowhere.</summary>
internal static class BlockWithoutGround
{
    public static Rule Rule { get; } = new(
        "block-without-ground",
        Severity.Look,
        Severity.Look,
        "A button block whose ground lead does not reach battery minus.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        if (paths.Source is null)
        {
            return [];
        }

        var grounded = paths.Joined(paths.Minus, t => t.Carries);
        return
        [
            .. from block in paths.Built
               where block.Part.Kind == "button block" && paths.IsWired(block.Part) && block.Model.Terminals.Length > 1
               let ground = new TerminalRef(block.Part.Name, block.Model.Terminals[1].Mark)
               where !grounded.Contains(ground)
               select Found(paths, block.Part.Name, ground),
        ];
    }

    private static Finding Found(Paths paths, string block, TerminalRef ground) => new(
        Rule.Code,
        Severity.Look,
        new Subject.OfTerminal(ground),
        "{ground} of the button block has no way to {minus}.",
        "A button block needs a ground of its own, even where its housing is metal and its data lead is right. Without it none of the buttons of {block} is heard, and it looks as if the box were broken.",
        "Draw the ground lead from {ground} to the ground of the handlebar, or straight to the ground bar.",
        [
            Evidence.Of("ground", Called.At(paths, ground)),
            Evidence.Of("block", block),
            Evidence.Of("minus", Called.At(paths, paths.Minus)),
        ]);
}

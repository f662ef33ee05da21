using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Sizing;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A name under <c>ampacity rule</c> that no rule has: wires and fuses are then judged by one the owner did not choose.</summary>
internal static class AmpacityRuleUnknown
{
    public static Rule Rule { get; } = new(
        "ampacity-rule-unknown",
        Severity.Look,
        Severity.Look,
        "An ampacity rule that is not known here.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        if (AmpacityRules.Unknown(study.Loom.Conditions) is not { } name)
        {
            return [];
        }

        var names = AmpacityRules.All.Select(r => r.Name).ToList();
        var near = Nearest.To(name, names);
        return
        [
            new Finding(
                Rule.Code,
                Severity.Look,
                new Subject.OfCondition("ampacity rule"),
                "{name} is no ampacity rule; wires and fuses are judged by {usual} instead.",
                "What a wire may carry differs by a factor of five from one published rule to the next, so it must be the one you meant.",
                near is null ? "Write one of: {names}." : "Write {near}, or one of: {names}.",
                [
                    Evidence.Of("name", name),
                    Evidence.Of("usual", AmpacityRules.Usual.Name),
                    Evidence.Of("near", near ?? "none"),
                    Evidence.Of("names", string.Join(", ", names)),
                ]),
        ];
    }
}

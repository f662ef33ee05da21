using Loomwright.Bench;

namespace Loomwright.Web.Bench;

/// <summary>A run of steps of one act, under one heading; each step with whether power comes on (true) or goes off (false) with it.</summary>
internal sealed record ActGroup(Act Act, List<(Step Step, bool? Power)> Steps)
{
    public static IReadOnlyList<ActGroup> Of(Stage stage)
    {
        var groups = new List<ActGroup>();
        var on = false;
        foreach (var step in stage.Steps)
        {
            if (groups.Count == 0 || groups[^1].Act != step.Act)
            {
                groups.Add(new ActGroup(step.Act, []));
            }

            groups[^1].Steps.Add((step, step.PowerOn == on ? null : step.PowerOn));
            on = step.PowerOn;
        }

        return groups;
    }
}

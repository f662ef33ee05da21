using Loomwright.Bench;

namespace Loomwright.Web.Bench;

/// <summary>A run of steps of one act, under one heading.</summary>
internal sealed record ActGroup(string Title, bool PowerOn, IReadOnlyList<Step> Steps)
{
    public static IReadOnlyList<ActGroup> Of(Stage stage)
    {
        var groups = new List<ActGroup>();
        var run = new List<Step>();
        foreach (var step in stage.Steps)
        {
            if (run.Count > 0 && (run[0].Act != step.Act || run[0].PowerOn != step.PowerOn))
            {
                groups.Add(Group(run));
                run = [];
            }

            run.Add(step);
        }

        return run.Count == 0 ? groups : [.. groups, Group(run)];
    }

    private static ActGroup Group(List<Step> run) => new(Heading(run[0].Act), run[0].PowerOn, run);

    private static string Heading(Act act) => act switch
    {
        Act.Fetch => "Have at hand",
        Act.TakeOut => "Take out",
        Act.Connect => "Connect",
        Act.Measure => "Measure",
        Act.PowerUp => "Power up, in this order",
        Act.Operate => "Operate and look",
        Act.PowerDown => "Power down, in this order",
        Act.Again => "Check again what worked before",
    };
}

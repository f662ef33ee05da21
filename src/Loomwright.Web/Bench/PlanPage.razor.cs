using System.Globalization;
using Loomwright.Bench;
using Loomwright.Proof;
using Loomwright.Records;
using Loomwright.Sessions;
using Loomwright.Web.Bikes;
using Loomwright.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Bench;

/// <summary>The bench plan, a stage at a time, and the plan on the bike beside it.</summary>
public sealed partial class PlanPage
{
    private Bike? bike;
    private Plan? plan;
    private Proven? proven;
    private Stage? stage;
    private Stage? before;
    private Stage? after;
    private string? waiting;

    /// <summary>The design's path in the folder.</summary>
    [Parameter]
    public string Path { get; set; } = "";

    /// <summary>Number of the stage shown; the first when left out or unknown.</summary>
    [SupplyParameterFromQuery(Name = "stage")]
    public int? Number { get; set; }

    /// <summary><c>bike</c> for the plan on the bike; else the bench plan.</summary>
    [SupplyParameterFromQuery(Name = "on")]
    public string? On { get; set; }

    /// <summary>Whether what the plan catches is to be worked out now.</summary>
    [SupplyParameterFromQuery(Name = "catches")]
    public bool Asked { get; set; }

    [Inject]
    private Garage Garage { get; set; } = null!;

    protected override async Task OnParametersSetAsync()
    {
        var at = Garage.Live(Path)?.Current;
        bike = at?.Bike;
        proven = at is { Bike.Loom: not null } && On != "bike" ? Proofs.Ready(Path, at.Sha256) : null;
        Show(bike?.Loom is null ? null : On == "bike" ? bike.PlanOnTheBike() : proven?.Plan ?? bike.Plan());
        if (Asked && proven is null && On != "bike" && at is { Bike.Loom: not null })
        {
            waiting = Proofs.Waiting(Path, at.Sha256, at.Bike);
            proven = await Proofs.Begun(Path, at.Sha256, at.Bike);
            Show(proven.Plan);
        }
    }

    private void Show(Plan? shown)
    {
        plan = shown;
        stage = plan?.Stages.FirstOrDefault(s => s.Number == Number) ?? plan?.Stages.FirstOrDefault();
        before = plan?.Stages.LastOrDefault(s => s.Number < stage?.Number);
        after = plan?.Stages.FirstOrDefault(s => s.Number > stage?.Number);
    }

    // With the checks that are added it takes longer.
    private string Minutes => On == "bike" || proven is not null ? string.Create(CultureInfo.InvariantCulture, $"{Effort.Minutes(stage!)} min")
        : Asked ? "working out…" : "known when all checks are worked out";

    private string Guided => Links.Newest(Path, On == BenchSession.OnTheBike ? BenchSession.OnTheBike : BenchSession.OnTheBench, stage!.Number);

    private string At(Stage to) => string.Create(CultureInfo.InvariantCulture, $"{Links.To("bench", Path)}?stage={to.Number}{(On == "bike" ? "&on=bike" : "")}");
}

using Loomwright.Fixes;
using Loomwright.Live;
using Loomwright.Web.Bikes;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Check;

/// <summary>What the check finds in one design, and its fixes to be written.</summary>
public sealed partial class CheckPage
{
    private Bike? bike;
    private LiveDocument? document;
    private IDisposable? watching;
    private IReadOnlyList<Found> all = [];
    private bool live;
    private string said = "";

    /// <summary>The design's path in the folder.</summary>
    [Parameter]
    public string Path { get; set; } = "";

    [Inject]
    private Garage Garage { get; set; } = null!;

    /// <summary>Nobody is looking any more.</summary>
    public void Dispose() => watching?.Dispose();

    protected override void OnInitialized()
    {
        document = Garage.Live(Path);
        Take();
    }

    protected override void OnAfterRender(bool firstRender)
    {
        if (firstRender)
        {
            live = true;
            watching = document?.Subscribe(() => _ = InvokeAsync(Renew));
            StateHasChanged();
        }
    }

    private void Renew()
    {
        if (document!.Current.Bike != bike)
        {
            Take();
            StateHasChanged();
        }
    }

    private void Take()
    {
        bike = document?.Current.Bike;
        all = bike is null ? [] : Found.Of(bike);
    }

    // On the text that was shown; what others changed elsewhere meanwhile stays.
    private void Write(Fix fix)
    {
        var shown = document!.Changes.LastOrDefault(c => c.Before == bike!.Text)?.Base ?? document.Current.Sha256;
        said = document.Apply(shown, fix.Edits, "check page") is Written.Refused no
            ? $"Nothing was written: {no.What}; {no.Cure}."
            : $"Written into {Path}: {fix.Title}. Change the bike as well. Below is what the check finds now.";
        Renew();
    }
}

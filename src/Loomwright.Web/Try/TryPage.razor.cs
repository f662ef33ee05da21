using Loomwright.Web.Bikes;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Try;

/// <summary>One bike to operate on screen.</summary>
public sealed partial class TryPage
{
    private Session? session;
    private string? chosen;
    private bool picking;
    private MistakeStrip? strip;
    private bool focusStrip;
    private bool live;
    private bool found;

    /// <summary>The design's path in the folder.</summary>
    [Parameter]
    public string Path { get; set; } = "";

    [Inject]
    private Garage Garage { get; set; } = null!;

    protected override void OnInitialized()
    {
        var bike = Garage.Find(Path);
        found = bike is not null;
        session = bike is null ? null : Session.Start(bike);
        if (session is not null)
        {
            session.Changed = StateHasChanged;
        }

        chosen = session?.Loom.Wires is [var first, ..] ? first.Name : null;
    }

    // The page says when it answers, so that nobody presses a button that does nothing yet.
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            live = true;
            StateHasChanged();
        }
        else if (focusStrip && strip is not null)
        {
            focusStrip = false;
            await strip.FocusAsync();
        }
    }

    private void PutIn(Mistake mistake)
    {
        session!.PutIn(mistake);
        chosen = session.Touched is [var first, ..] ? first : chosen;
        Close();
    }

    private void TakeOut()
    {
        session!.TakeOut();
        focusStrip = true;
    }

    private void Close()
    {
        picking = false;
        focusStrip = true;
    }
}

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

    protected override void OnInitialized()
    {
        base.OnInitialized();
        Take(Document?.Current.Bike);
        chosen = session?.Loom.Wires is [var first, ..] ? first.Name : null;
    }

    // The page says when it answers, so that nobody presses a button that does nothing yet.
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            live = true;
            Watch();
            StateHasChanged();
        }
        else if (focusStrip && strip is not null)
        {
            focusStrip = false;
            await strip.FocusAsync();
        }
    }

    // The file changed: the same doings at the bike as it now is.
    protected override Task Renew()
    {
        if (Document!.Current.Bike is var bike && bike != session?.Bike)
        {
            Take(bike);
            StateHasChanged();
        }

        return Task.CompletedTask;
    }

    private void Take(Bike? bike)
    {
        found = bike is not null;
        session = bike is null ? null : session is null ? Session.Start(bike) : session.GoOn(bike);
        if (session is not null)
        {
            session.Changed = StateHasChanged;
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

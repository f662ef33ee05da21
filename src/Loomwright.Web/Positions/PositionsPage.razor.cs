using System.Diagnostics;
using Loomwright.Walk;
using Loomwright.Web.Bikes;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Positions;

/// <summary>One bike walked through every position, for as long as the person lets it.</summary>
public sealed partial class PositionsPage
{
    private static readonly TimeSpan BetweenTellings = TimeSpan.FromMilliseconds(500);

    private Bike? bike;
    private Walked? walked;
    private CancellationTokenSource? walking;
    private string status = "";
    private bool live;

    protected override void OnInitialized()
    {
        base.OnInitialized();
        bike = Document?.Current.Bike;
    }

    protected override void OnAfterRender(bool firstRender)
    {
        if (firstRender)
        {
            live = true;
            Watch();
            StateHasChanged();
        }
    }

    // The button that begins the walk stops it.
    private async Task Press()
    {
        if (walking is not null)
        {
            await walking.CancelAsync();
            return;
        }

        using var stop = walking = new CancellationTokenSource();
        (walked, status) = (null, "Begins …");
        var sinceTold = Stopwatch.StartNew();
        var walks = bike!;
        var found = await Task.Run(() => walks.Walk(new WalkOptions { Stop = stop.Token, Progress = Tell }));
        walking = null;
        if (walks == bike)
        {
            (walked, status) = (found, found.InWords);
        }

        void Tell(WalkProgress progress)
        {
            if (sinceTold.Elapsed >= BetweenTellings)
            {
                sinceTold.Restart();
                _ = InvokeAsync(() => Told(progress));
            }
        }
    }

    // What was walked is not this bike any more.
    protected override Task Renew()
    {
        if (Document!.Current.Bike is var now && now != bike)
        {
            walking?.Cancel();
            (bike, walked, status) = (now, null, "The file has changed; walk again.");
            StateHasChanged();
        }

        return Task.CompletedTask;
    }

    protected override void Left() => walking?.Cancel();

    private void Told(WalkProgress progress)
    {
        if (walking is not null)
        {
            status = FormattableString.Invariant($"{progress.Depth} operations from rest: {progress.States} states, {progress.Waiting} to go on from, surprises so far: {progress.Surprises}.");
            StateHasChanged();
        }
    }
}

using Loomwright.Fixes;
using Loomwright.Live;

namespace Loomwright.Web.Check;

/// <summary>What the check finds in one design, and its fixes to be written.</summary>
public sealed partial class CheckPage
{
    private readonly string _who = $"check page {Guid.NewGuid():N}";
    private Revision? shown;
    private IReadOnlyList<Found> all = [];
    private int written;
    private bool live;
    private string said = "";

    protected override void OnInitialized()
    {
        base.OnInitialized();
        Take();
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

    protected override Task Renew()
    {
        if (Document!.Current != shown)
        {
            Take();
            StateHasChanged();
        }

        return Task.CompletedTask;
    }

    private void Take()
    {
        shown = Document?.Current;
        all = shown is null ? [] : Found.Of(shown.Bike);
    }

    // Only into the text it was tried on: on another it may do harm.
    private Task Write(Fix fix)
    {
        var tried = shown!;
        if (Document!.Recheck() != tried)
        {
            said = "Nothing was written: the file was changed by somebody else meanwhile. Below is what the check finds now; look at the change again.";
        }
        else if (Document.Apply(tried.Sha256, fix.Edits, _who) is Written.Refused no)
        {
            said = $"Nothing was written: {no.What}; {no.Cure}.";
        }
        else
        {
            written++;
            said = $"Written into {Path}: {fix.Title}. Change the bike as well. Below is what the check finds now.";
        }

        return Renew();
    }

    private Task TakeBack()
    {
        var refused = Document!.Undo(_who) as Written.Refused;
        written -= refused is null ? 1 : 0;
        said = refused is null ? $"Taken back; {Path} is as it was before that." : $"Nothing was taken back: {refused.What}; {refused.Cure}.";
        return Renew();
    }
}

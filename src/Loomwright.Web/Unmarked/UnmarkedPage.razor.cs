using Loomwright.Contacts;

namespace Loomwright.Web.Unmarked;

/// <summary>What lies in the hand: a switch or lock with positions, or a lamp; then the pairs to touch.</summary>
public sealed partial class UnmarkedPage
{
    private Bike? bike;
    private bool live;
    private bool lamp;
    private string leads = "red, brown, black";
    private string positions = "off, on, lights";
    private string wrong = "";
    private NamedThings? begun;
    private NamedThings? lampBegun;

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

    // What was read with the meter stays, whatever the file says now.
    protected override Task Renew()
    {
        bike = Document!.Current.Bike;
        StateHasChanged();
        return Task.CompletedTask;
    }

    private void Begin()
    {
        var (named, turned) = (NamedThings.Listed(leads), NamedThings.Listed(positions));
        wrong = NamedThings.Wrong("leads", named, lamp ? LampLeads.MostLeads : UnmarkedSwitch.MostLeads)
            ?? (lamp ? null : NamedThings.Wrong("positions", turned, UnmarkedSwitch.MostPositions)) ?? "";
        begun = wrong.Length == 0 && !lamp ? new NamedThings(named, turned) : null;
        lampBegun = wrong.Length == 0 && lamp ? new NamedThings(named, []) : null;
    }
}

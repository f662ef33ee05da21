using Loomwright.Drawing;
using Loomwright.Text;
using Loomwright.Web.Bikes;
using Loomwright.Web.Try;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Picture;

/// <summary>The wiring of one bike as a picture that answers: seen, operated, followed, and with a mistake in.</summary>
public sealed partial class PicturePage
{
    private Session? session;
    private ILookup<string, string> controls = null!;
    private Look look = Look.None;
    private Canvas? canvas;
    private MistakeStrip? strip;
    private SheetName sheet = null!;
    private string numbers = "volts";
    private string? said;
    private bool found;
    private bool live;
    private bool drawn;
    private bool docked = true;
    private bool unfolded;
    private bool picking;
    private bool following;
    private bool focusStrip;
    private Thing? chosen;
    private Pointed? menu;
    private Unclear? unclear;
    private IReadOnlyList<Stop> stops = [];
    private Moves? moves;

    [Inject]
    private Drawer Drawer { get; set; } = null!;

    protected override void OnInitialized()
    {
        base.OnInitialized();
        moves = Document is null ? null : new Moves(Document);
        Take(Document?.Current.Bike);
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (focusStrip && strip is not null)
        {
            focusStrip = false;
            await strip.FocusAsync();
        }
    }

    private void Take(Bike? bike)
    {
        found = bike is not null;
        session = bike is null ? null : session is null ? Session.Start(bike) : session.GoOn(bike);
        if (session is not null)
        {
            controls = session.Loom.Parts.SelectMany(p => Bike.Model(p).Controls.Select(c => (Part: p.Name, Control: c.Name))).ToLookup(c => c.Part, c => c.Control);
            session.Changed = Changed;
            sheet = session.Bike.Sheets.Contains(sheet) ? sheet : session.Bike.Sheets[0];
            chosen = chosen is { } thing && thing.IsIn(session.Loom) ? chosen : null;
            stops = chosen is { IsWire: true } wire && following ? Stop.Of(session.Loom, session.Lines, session.Loom.Wire(wire.Name)!) : [];
        }
    }

    // The file changed: the same doings at the bike as it now is, on a sheet drawn anew.
    protected override async Task Renew()
    {
        if (Document!.Current.Bike is var bike && bike != session?.Bike)
        {
            Take(bike);
            if (session is not null && drawn)
            {
                await Change(sheet);
            }

            StateHasChanged();
        }
    }

    // What changed in the picture goes out before the rest of the page is worked out.
    private void Changed()
    {
        _ = Show();
        StateHasChanged();
    }

    private async Task Show()
    {
        var before = look;
        look = Look.Of(session!.View, session.Touched, controls);
        await canvas!.Show(look.Since(before));
    }

    private void Ready(bool seen)
    {
        live = !seen;
        Watch();
    }

    private async Task Change(SheetName to)
    {
        (sheet, said) = (to, "Arranging the sheet …");
        StateHasChanged();
        await Put(await Drawer.Draw(session!.Bike, to));
        said = null;
    }

    private async Task Put(string svg)
    {
        await canvas!.Draw(svg, sheet.Title, wide: sheet.Kind == SheetKind.Function, movable: sheet.Kind == SheetKind.Overview && moves!.ReadOnly is null);
        (live, drawn, look) = (true, true, Look.None);
        await Show();
        await canvas.Number(numbers);
        await Mark();
    }

    private Task Compare(string? svg) => svg is null ? Change(sheet) : Put(svg);

    private Task Number(string which)
    {
        numbers = which;
        return canvas!.Number(which).AsTask();
    }

    private Task Picked(Pointed at)
    {
        menu = at.Menu ? at : null;
        return Choose(at.Thing);
    }

    private async Task Found(Thing thing)
    {
        await Choose(thing);
        await canvas!.Centre(thing);
        await canvas.Focus(thing);
    }

    private Task Choose(Thing thing)
    {
        (chosen, unclear) = (thing, null);
        if (!thing.IsWire || !stops.Any(s => s.Next is { } next && Names.Same(next.Name, thing.Name)))
        {
            stops = thing.IsWire && session!.Loom.Wire(thing.Name) is { } wire ? Stop.Of(session.Loom, session.Lines, wire) : [];
            following &= thing.IsWire;
        }

        return Mark();
    }

    private async Task Unchoose()
    {
        var was = chosen;
        (chosen, following, stops) = (null, false, []);
        await Mark();
        await canvas!.Focus(was!.Value);
    }

    private Task Follow()
    {
        following = !following;
        return Mark();
    }

    private async Task Mark()
    {
        await canvas!.Light(chosen);
        await canvas.Follow(following ? stops.Select(s => s.Mark) : []);
    }

    private void AnyMistake() => picking = true;

    private void PutIn(Mistake mistake)
    {
        (menu, picking, focusStrip) = (null, false, true);
        session!.PutIn(mistake);
    }

    private async Task TakeOut()
    {
        session!.TakeOut();
        if (chosen is { } thing)
        {
            await canvas!.Focus(thing);
        }
    }

    private async Task Close()
    {
        (menu, unclear, picking) = (null, null, false);
        if (chosen is { } thing)
        {
            await canvas!.Focus(thing);
        }
    }

    private async Task Drag(Dragged dragged)
    {
        said = $"Moving {dragged.Part} …";
        StateHasChanged();
        said = await Task.Run(() => moves!.Drag(dragged.Part, dragged.X, dragged.Y));
    }
}

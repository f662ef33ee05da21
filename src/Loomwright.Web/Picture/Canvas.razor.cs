using Loomwright.Web.Start;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Loomwright.Web.Picture;

/// <summary>The drawn sheet on the page. It is put there once; afterwards only what changes is sent, one message a change.</summary>
public sealed partial class Canvas
{
    private ElementReference host;
    private IJSObjectReference? drawn;
    private DotNetObjectReference<Canvas>? self;

    /// <summary>The page answers; true when there is also room where a sheet would be seen.</summary>
    [Parameter]
    public EventCallback<bool> OnReady { get; set; }

    /// <summary>For the first time there is room to see a sheet.</summary>
    [Parameter]
    public EventCallback OnSeen { get; set; }

    /// <summary>Something was pointed at.</summary>
    [Parameter]
    public EventCallback<Pointed> OnPick { get; set; }

    /// <summary>Two or more wires lie where the finger was.</summary>
    [Parameter]
    public EventCallback<Unclear> OnWhich { get; set; }

    /// <summary>A box was dragged.</summary>
    [Parameter]
    public EventCallback<Dragged> OnMoved { get; set; }

    [Inject]
    private IJSRuntime Script { get; set; } = null!;

    [JSInvokable]
    public Task Seen() => OnSeen.InvokeAsync();

    [JSInvokable]
    public Task Pick(string kind, string name, bool menu, double x, double y) => OnPick.InvokeAsync(new(new Thing(kind, name), menu, x, y));

    [JSInvokable]
    public Task Which(string[] wires, double x, double y) => OnWhich.InvokeAsync(new(wires, x, y));

    [JSInvokable]
    public Task Moved(string part, double x, double y) => OnMoved.InvokeAsync(new(part, x, y));

    public async ValueTask DisposeAsync()
    {
        self?.Dispose();
        if (drawn is not null)
        {
            try
            {
                await drawn.DisposeAsync();
            }
            catch (JSDisconnectedException)
            {
                // The page is gone, and what was drawn with it.
            }
        }
    }

    /// <param name="wide">The wires have room to be thick.</param>
    /// <param name="movable">Boxes can be dragged.</param>
    internal ValueTask Draw(string svg, string name, bool wide, bool movable) => Call("draw", svg, name, wide, movable);

    internal ValueTask Show(Told told) => told.IsEmpty ? ValueTask.CompletedTask : Call("show", told);

    internal ValueTask Light(Thing? thing) => Call("light", thing?.Kind, thing?.Name);

    internal ValueTask Follow(IEnumerable<Mark> stops) => Call("follow", stops);

    internal ValueTask Centre(Thing thing) => Call("centre", thing.Kind, thing.Name);

    internal ValueTask Focus(Thing thing) => Call("focus", thing.Kind, thing.Name);

    /// <summary>Larger or smaller by a factor; 0 shows the whole sheet.</summary>
    internal ValueTask Zoom(double by) => Call("zoom", by);

    /// <summary>What stands on the wires: letters, volts or amps.</summary>
    internal ValueTask Number(string which) => Call("number", which);

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!firstRender)
        {
            return;
        }

        self = DotNetObjectReference.Create(this);
        try
        {
            await using var module = await Script.InvokeAsync<IJSObjectReference>("import", $"./served/picture.js?{Served.Version}");
            drawn = await module.InvokeAsync<IJSObjectReference>("mount", host, self, Served.Text("drawn.css"));
            await OnReady.InvokeAsync(await drawn.InvokeAsync<bool>("seen"));
        }
        catch (Exception gone) when (gone is JSDisconnectedException or OperationCanceledException)
        {
            // Left before the sheet was there.
        }
    }

    private ValueTask Call(string what, params object?[] with) => drawn is null ? ValueTask.CompletedTask : drawn.InvokeVoidAsync(what, with);
}

/// <summary>What was pointed at and where on the canvas, in pixels from its upper left corner.</summary>
/// <param name="Menu">Asked for its mistakes, not only chosen.</param>
public sealed record Pointed(Thing Thing, bool Menu, double X, double Y);

/// <summary>Wires that lie too near to one another to be told apart, and where.</summary>
public sealed record Unclear(IReadOnlyList<string> Wires, double X, double Y);

/// <summary>Where the upper left corner of a part was dragged to, in pixels of the sheet.</summary>
public sealed record Dragged(string Part, double X, double Y);

/// <summary>A numbered stop of a followed wire in the picture: at which end of which wire it stands; 1 is the second end.</summary>
public sealed record Mark(int Number, string? Wire, int End, string Part);

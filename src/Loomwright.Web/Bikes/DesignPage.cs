using Loomwright.Live;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Loomwright.Web.Bikes;

/// <summary>A page about one design that goes on with what the file holds now, whoever changed it.</summary>
public abstract class DesignPage : ComponentBase, IDisposable
{
    private IDisposable? _watching;

    /// <summary>The design's path in the folder.</summary>
    [Parameter]
    public string Path { get; set; } = "";

    [Inject]
    protected Garage Garage { get; set; } = null!;

    /// <summary>The file as it lives in this program; null when the folder lists none or it cannot be read.</summary>
    protected LiveDocument? Document { get; private set; }

    /// <summary>Nobody is looking any more.</summary>
    public void Dispose()
    {
        _watching?.Dispose();
        Left();
        GC.SuppressFinalize(this);
    }

    protected override void OnInitialized() => Document = Garage.Live(Path);

    /// <summary>Renews from now on after every change of the file. What goes wrong on the way is shown as our own fault, never passed over.</summary>
    protected void Watch() => _watching = Document?.Subscribe(() => _ = InvokeAsync(async () =>
    {
        try
        {
            await Renew();
        }
        catch (Exception gone) when (gone is OperationCanceledException or JSDisconnectedException)
        {
            // The browser went away meanwhile: nobody is there to be shown anything.
        }
        catch (Exception fault)
        {
            await DispatchExceptionAsync(fault);
        }
    }));

    /// <summary>The file may have changed.</summary>
    protected abstract Task Renew();

    /// <summary>Ends what the page began, when it is left.</summary>
    protected virtual void Left()
    {
    }
}

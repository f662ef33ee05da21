using System.Collections.Immutable;
using Loomwright.Diagnosis;
using Loomwright.Web.Bikes;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Cause;

/// <summary>Something does not work: six symptoms to tap, then one question after another until a repair is named.</summary>
public sealed partial class TroublePage
{
    private Bike? bike;
    private TroubleTable? table;
    private Symptom? symptom;
    private int done;
    private Trouble? search;
    private ImmutableStack<Trouble> before = [];

    /// <summary>The design's path in the folder.</summary>
    [Parameter]
    public string Path { get; set; } = "";

    [Inject]
    private Garage Garage { get; set; } = null!;

    protected override void OnParametersSet() => bike = Garage.Find(Path);

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender && bike?.Loom is not null)
        {
            table = await Tables.Of(bike);
            done = Math.Min(1, table.Table.Stimuli.Length - 1);
            StateHasChanged();
        }
    }

    private void Take(Evidence answer) => Go((search ?? Trouble.Begin(table!)).After(answer));

    private void Mended(Suspect suspect) => Go(search!.Mended(suspect));

    private void Go(Trouble next)
    {
        before = search is null ? before : before.Push(search);
        search = next;
    }

    private void Back()
    {
        if (before.IsEmpty)
        {
            (search, symptom) = (null, null);
        }
        else
        {
            before = before.Pop(out search);
        }
    }

    private static string Standing(Search state) => state switch
    {
        Search.Found => "Found: see below. Mend it, say so there, and look again whether all is well.",
        Search.DoesNotFit => "The answers fit nothing in the list, also after asking again. It may be two mistakes that hide each other, or something the file does not tell of.",
        _ => "What there is to see and to measure does not tell these apart any more. Begin with the first.",
    };
}

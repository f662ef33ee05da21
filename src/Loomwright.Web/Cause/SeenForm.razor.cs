using System.Globalization;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Simulation;
using Microsoft.AspNetCore.Components;
using Evidence = Loomwright.Diagnosis.Evidence;

namespace Loomwright.Web.Cause;

/// <summary>What a person saw and heard of one state: each thing “did not look” until they set it.</summary>
public sealed partial class SeenForm
{
    private int[] shown = [];
    private byte[] healthy = [];
    private byte?[] signs = [];
    private string? wrong;
    private string? question;

    [Parameter, EditorRequired]
    public TroubleTable Table { get; set; } = null!;

    /// <summary>What was done, by its place in the table.</summary>
    [Parameter, EditorRequired]
    public int Stimulus { get; set; }

    /// <summary>What was tapped before; it asks for that to be told.</summary>
    [Parameter]
    public Symptom? Symptom { get; set; }

    /// <summary>What was told of this state already.</summary>
    [Parameter]
    public Evidence.Seen? Told { get; set; }

    [Parameter, EditorRequired]
    public EventCallback<Evidence> OnSeen { get; set; }

    protected override void OnInitialized()
    {
        healthy = [.. Table.Singles[0].Looks[Stimulus].Signs];
        shown = [.. Enumerable.Range(0, healthy.Length)];
        signs = new byte?[healthy.Length];
        foreach (var (observable, sign) in Told?.Signs ?? [])
        {
            signs[observable] = sign;
        }
    }

    private static byte Off(Observable what, byte sign) => what.Sense switch
    {
        Sense.Fuse => sign,
        Sense.Relay => 0,
        Sense.BoxLight => (byte)Symbol.Dark,
        _ => (byte)((Symbol)sign switch { Symbol.Sounds => Symbol.Silent, Symbol.Turns or Symbol.Works => Symbol.Rests, Symbol.Silent or Symbol.Rests => (Symbol)sign, _ => Symbol.Dark }),
    };

    private void Set(int observable, string? value)
    {
        signs[observable] = byte.TryParse(value, CultureInfo.InvariantCulture, out var sign) ? sign : null;
        (wrong, question) = (null, null);
    }

    /// <summary>Whether it shows or sounds by itself: a fuse is taken out to be looked at, a relay is listened to.</summary>
    internal static bool IsSeen(Observable what) => what.Sense is Sense.Sight or Sense.BoxLight;

    private void Dark()
    {
        foreach (var o in shown.Where(o => IsSeen(Table.Table.Observables[o])))
        {
            signs[o] = Off(Table.Table.Observables[o], healthy[o]);
        }
    }

    private void Rest()
    {
        foreach (var o in shown.Where(o => IsSeen(Table.Table.Observables[o])))
        {
            signs[o] ??= healthy[o];
        }
    }

    private string Name(int o) => Table.Table.Observables[o] is { Sense: Sense.BoxLight } light ? $"Light at {light.Name.Replace('.', ' ')}" : Words.Name(Table.Table.Observables[o].Name);

    // What this thing can show under anything in the table.
    private IEnumerable<(string Word, byte Sign)> Offered(int o) =>
        Report.WordsOf(Table.Table.Observables[o]).Where(w => w.Sign == healthy[o] || w.Sign == signs[o] || w.Sign == Off(Table.Table.Observables[o], healthy[o]) || Table.CanShow(o, w.Sign));

    private async Task Say()
    {
        var seen = new Evidence.Seen(Stimulus, [.. shown.Where(o => signs[o] is not null).Select(o => (o, signs[o]!.Value))]);
        wrong = seen.Signs.IsEmpty ? Symptom?.Ask ?? "Nothing is set yet: set what you looked at." : Symptom?.Untold(Table, seen);
        if (wrong is null && question is null && Doubt.Of(Table, seen) is { } doubt)
        {
            question = doubt;
        }
        else if (wrong is null)
        {
            await OnSeen.InvokeAsync(seen);
        }
    }
}

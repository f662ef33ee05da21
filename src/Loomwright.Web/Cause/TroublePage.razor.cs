using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Diagnosis;
using Loomwright.Live;
using Loomwright.Records;
using Loomwright.Sessions;
using Loomwright.Web.Bikes;
using Loomwright.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Evidence = Loomwright.Diagnosis.Evidence;
using Question = Loomwright.Diagnosis.Question;

namespace Loomwright.Web.Cause;

/// <summary>
/// Something does not work: six symptoms to tap, or a step of a session that was not as expected; then one question after
/// another until a repair is named.
/// </summary>
public sealed partial class TroublePage
{
    private Bike? bike;
    private TroubleTable? table;
    private Symptom? symptom;
    private int done;
    private int? lamp;
    private Trouble? search;
    // The search before each answer, with the answer's id in the record.
    private ImmutableStack<(Trouble Search, string Answer)> before = [];
    private Handover? handed;
    private int? untold;
    private string? refused;
    private string? unread;
    private bool changed;
    private bool hadPower;
    // What was told before the heat is not shown as if it counted still.
    private bool heating;
    private Question? rereading;
    private bool isAfterHeat;
    private Asking? asking;
    private OffFirst? off;
    private bool wasAnswered;
    private readonly CancellationTokenSource leaving = new();

    private (KeptSearch Search, int Answers)? earlier;
    private Keeping keeping = new();
    private Revision? begun;

    /// <summary>Id of a search that was kept, to go on with.</summary>
    [SupplyParameterFromQuery(Name = "search")]
    public string? SearchId { get; set; }

    /// <summary>Id of the session it comes from; null: the whole bike, from a symptom.</summary>
    [SupplyParameterFromQuery(Name = "session")]
    public string? SessionId { get; set; }

    /// <summary>The session's step that was not as expected.</summary>
    [SupplyParameterFromQuery(Name = "step")]
    public string? StepId { get; set; }

    [Inject]
    private Guide Guide { get; set; } = null!;

    [Inject]
    private IJSRuntime Script { get; set; } = null!;

    [Inject]
    private NavigationManager Navigation { get; set; } = null!;

    // What has power on, as far as is known: the state that is told or asked for; else the last one that was, until a check says “key off” and is answered, or heat says off.
    private int? Powered => Asked
        ?? (search is null ? (symptom is null ? null : done) : Last(search) is { } last && last != search.Table.HotAt ? last : null);

    // The state that is told or asked for.
    private int? Asked => untold ?? rereading?.Stimulus
        ?? (search is { State: Search.GoesOn, Odd: { } odd } ? odd.Place.Stimulus : search?.Questions is [var question, ..] ? question.Stimulus : null);

    // At first nobody has told.
    private bool MayBeOn => Powered is not null || (search is null && handed is null && !isAfterHeat);

    // What brings power where a check, heat or what goes before the first question took it off; after a repair that is said by itself.
    private ImmutableArray<string> PowerFirst => !IsJustHanded && search is { At: not null } or { Answers.IsEmpty: true, Table.WrongBefore: not null } ? [] : handed?.PowerOn ?? table!.PowerOn;

    // What takes power away, in order; on a whole bike nobody knows whether its engine runs.
    private ImmutableArray<string> Off => handed is not null ? Loomwright.Bench.WayOff.Of(handed.Stage)
        : ["Stop the engine, if it runs.", $"{char.ToUpperInvariant(table!.MinusOff[0])}{table.MinusOff[1..]}."];

    // As the session calls what lies in place of a part; null for its own name.
    private string? HotCalled => search?.Table.HotThing is { } thing && handed?.Stage.Lying(thing) is { } lying && lying != thing ? $"{char.ToUpperInvariant(lying[0])}{lying[1..]}" : null;

    private int? Last(Trouble now) => now.At ?? (now.Answers is [.., var answer] ? answer.Place.Stimulus : handed?.Done);

    // From a step with or after power on, with nothing asked yet but how that step looked.
    private bool IsJustHanded => handed is { Step.Act: Act.PowerUp or Act.Operate or Act.PowerDown or Act.Again } && before.Count() == (handed.IsTold ? 0 : 1);

    // Also from a check before power that was gone back to from a live loom.
    private bool IsOffFirst => IsJustHanded || (search!.Table.IsPowerOff && before.IsEmpty && Guided.Standing.PutBack(handed!.Stage).Any());

    // Whether anything was asked here that needs power, answered, taken back or not.
    private bool HadPower => hadPower || Asked is not null || (!before.IsEmpty && search!.Answers.Any(a => a.Place.Stimulus is not null));

    // With how the search leaves the loom: live, or with a fuse or a plug out.
    private string BackToStep => Links.Session(Path, handed!.Session, handed.Stage.Number) + (HadPower ? "#live" : "#apart");

    protected override void OnInitialized()
    {
        base.OnInitialized();
        begun = Document?.Current;
        // A session has its own bike, also where the file is not there any more or cannot be understood.
        bike = begun?.Bike is { Loom: not null } read ? read
            : keeping.Look(() => SessionId is not null && Guide.Find(SessionId) is { } session ? Guide.BikeOf(session) : null) ?? begun?.Bike;
    }

    // A search goes on with the file it began with, and says so; a session has its own.
    protected override Task Renew()
    {
        changed = handed is null && Document!.Current.Bike != bike;
        StateHasChanged();
        return Task.CompletedTask;
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        hadPower = HadPower;
        if (wasAnswered)
        {
            wasAnswered = false;
            await ((IsJustHanded ? off?.Show() : asking?.Show()) ?? ValueTask.CompletedTask);
        }

        if (!firstRender || bike?.Loom is null)
        {
            return;
        }

        try
        {
            handed = SessionId is null || StepId is null ? null : await Task.Run(() => Guide.HandOver(SessionId, StepId));
            search = handed?.Search;
            untold = handed is { IsTold: false } ? handed.Done : null;
            Find();
            table = search?.Table ?? await Tables.Of(bike, leaving.Token);
            await Replay();
        }
        catch (OperationCanceledException)
        {
            return;
        }
        catch (RecordsException e)
        {
            unread = e.Message;
            StateHasChanged();
            return;
        }

        done = Math.Min(1, table.Table.Stimuli.Length - 1);
        Watch();
        StateHasChanged();
    }

    protected override void Left()
    {
        leaving.Cancel();
        leaving.Dispose();
    }

    private async Task Take(Evidence answer)
    {
        untold = null;
        var now = search ?? Trouble.Begin(table!);
        var id = Go(now.After(answer));
        await Keep(k => k.Keep(id, now.Table, answer, DateTimeOffset.Now));
    }

    // In a session the checks of its stage come again; else the search goes on.
    private async Task Mended(Suspect suspect)
    {
        if (handed is null)
        {
            var id = Go(search!.Mended(suspect));
            await Keep(k => k.KeepMended(id, suspect.Repair, DateTimeOffset.Now));
            return;
        }

        if (Keep(EntryKind.Changed, suspect.Repair))
        {
            Navigation.NavigateTo(BackToStep, forceLoad: true);
        }
    }

    private async Task Hot(int stimulus, string? thing = null)
    {
        _ = handed is null || Keep(EntryKind.Hot, "");
        (untold, heating) = (null, true);
        await Script.InvokeVoidAsync("scrollTo", 0, 0);
        StateHasChanged();
        var now = search ?? Trouble.Begin(table!);
        var id = KeptSearch.NewId(DateTimeOffset.Now);
        await Keep(k => k.KeepHot(id, now.Table, stimulus, DateTimeOffset.Now, thing));
        Go(await Task.Run(() => Trouble.Begin((thing is null ? now.Table : now.Table.Heated(thing)).Hot(stimulus), now.Answers)), id);
        if (handed is not null && refused is null && keeping.Not is null)
        {
            // What the stage told before the heat does not count any more.
            (handed, before) = (await Task.Run(() => Guide.HandOver(SessionId!, StepId!)), []);
            (search, table) = (handed!.Search, handed.Search.Table);
            await Replay();
        }

        // What heat changed stands above the question.
        (heating, wasAnswered) = (false, false);
    }

    private void Again(Question question) => (rereading, wasAnswered) = (question, true);

    private bool Keep(EntryKind kind, string raw)
    {
        refused = Guide.KeepOne(handed!.Session, new Given(Guid.NewGuid().ToString("N"), handed.Step.Id, kind, null, raw, null, DateTimeOffset.Now));
        return refused is null;
    }

    // Gives the id of the answer that leads there.
    private string Go(Trouble next, string? answer = null)
    {
        answer ??= KeptSearch.NewId(DateTimeOffset.Now);
        before = search is null ? before : before.Push((search, answer));
        (search, rereading, wasAnswered) = (next, null, true);
        return answer;
    }

    // What is begun again is another search; the one before stays in the record.
    private async Task Back()
    {
        rereading = null;
        if (before.IsEmpty)
        {
            (search, symptom, lamp, keeping, isAfterHeat) = (null, null, null, new(), false);
            await Script.InvokeVoidAsync("history.replaceState", null, "", Links.To("trouble", Path));
        }
        else
        {
            before = before.Pop(out var last);
            (search, wasAnswered) = (last.Search, true);
            await Keep(k => k.TakeBack(last.Answer, DateTimeOffset.Now));
        }
    }

    private void Find()
    {
        keeping.GoOn(keeping.Look(() => handed is not null ? Guide.FindSearch(handed) : SearchId is not null ? Guide.FindSearch(SearchId) : null));
        earlier = handed is null && keeping.Kept is null && keeping.Look(() => Guide.NewestSearch(Path)) is { } last ? (last, last.Answers) : null;
        if (handed is null && keeping.Kept is { } kept && kept.Design != begun!.Sha256)
        {
            (bike, changed) = (kept.Bike, true);
        }
    }

    // What was answered before the page was loaded again.
    private async Task Replay()
    {
        if (keeping.Kept is { } kept)
        {
            var start = search ?? Trouble.Begin(table!);
            foreach (var (id, next) in await Task.Run(() => keeping.Look(() => kept.Played(start, DateTimeOffset.Now))) ?? [])
            {
                untold = null;
                Go(next, id);
            }
        }

        wasAnswered = false;
    }

    private async Task Keep(Func<KeptSearch, string?> what)
    {
        var isNew = keeping.Kept is null;
        keeping.Keep(() => handed is not null ? Guide.BeginSearch(handed, DateTimeOffset.Now) : Guide.BeginSearch(Path, begun!.Sha256, begun.Text.Content, DateTimeOffset.Now), what);
        if (isNew && handed is null && keeping.Kept is { } kept)
        {
            await Script.InvokeVoidAsync("history.replaceState", null, "", $"{Links.To("trouble", Path)}?search={kept.Id}");
        }
    }
}

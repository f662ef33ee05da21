using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Loomwright.Records;
using Loomwright.Sessions;
using Loomwright.Web.Bikes;
using Loomwright.Web.Shell;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Loomwright.Web.Guided;

/// <summary>What the pages of a session ask for: begin, hand answers over, see what others gave. No live link is needed between.</summary>
internal static class SessionApi
{
    /// <summary>Where a page asks whether a bench session can begin.</summary>
    public const string Ready = "session-ready";

    private const string NotAnswers = "Loomwright-Not-Answers";

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) } };

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/session-begin/{*path}", Begin);
        routes.MapGet("/" + Ready + "/{*path}", IsReady);
        routes.MapGet("/session-api/{id}", Since).AddEndpointFilter(Told);
        routes.MapPost("/session-api/{id}", HandOver).AddEndpointFilter(Told);
    }

    /// <summary>Entries as the page's script reads them.</summary>
    public static string Json(IEnumerable<Entry> entries) => JsonSerializer.Serialize(entries, Options);

    // Records that cannot be read are no fault of the answers: they stay on the phone, and it says why.
    private static async ValueTask<object?> Told(EndpointFilterInvocationContext context, EndpointFilterDelegate further)
    {
        try
        {
            return await further(context);
        }
        catch (RecordsException e)
        {
            return Results.Json(new { Why = e.Message }, Options, statusCode: StatusCodes.Status409Conflict);
        }
    }

    // What is still waited for, in words; nothing when a session can begin.
    private static IResult IsReady(string path, Garage garage) =>
        garage.Live(path)?.Current is { Bike.Loom: not null } at ? Results.Text(Proofs.Waiting(path, at.Sha256, at.Bike) ?? "") : Results.NotFound();

    private static async Task<IResult> Begin(string path, HttpRequest request, Guide guide, Garage garage)
    {
        if (!request.HasFormContentType)
        {
            return Results.BadRequest();
        }

        var form = await request.ReadFormAsync();
        try
        {
            var fault = Field("fault");
            if (fault.Length > 0 && garage.Find(path)?.Fault(fault) is { Fault: null } or null)
            {
                return Results.Redirect($"{Links.To("session", path)}?anew=true&unknown=true");
            }

            // Nobody begins along a plan that still grows: the answer waits for what the proof adds.
            if (Field("plan") != BenchSession.OnTheBike && garage.Live(path)?.Current is { Bike.Loom: not null } at)
            {
                await Proofs.Begun(path, at.Sha256, at.Bike);
            }

            return guide.Begin(path, Field("who"), Field("meter"), fault.Length == 0 ? null : fault, DateTimeOffset.Now, Field("plan")) is { } begun
                ? Results.Redirect(Links.Session(path, begun.Id))
                : Results.NotFound();
        }
        catch (RecordsException)
        {
            return Results.Redirect($"{Links.To("session", path)}?anew=true&refused=true");
        }

        string Field(string name) => form[name].ToString().Trim() is var text && text.Length > 200 ? text[..200] : text;
    }

    private static IResult Since(string id, long? after, Guide guide) =>
        guide.Find(id) is { } session ? Results.Json(guide.Records.Entries(session.Id, after ?? 0), Options) : Results.NotFound();

    private static async Task<IResult> HandOver(string id, long? after, HttpRequest request, Guide guide)
    {
        if (guide.Find(id) is not { } session)
        {
            return Results.NotFound();
        }

        Given?[]? given;
        try
        {
            given = await request.ReadFromJsonAsync<Given?[]>(Options);
        }
        catch (BadHttpRequestException e)
        {
            return Results.StatusCode(e.StatusCode);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return Results.BadRequest();
        }

        if (given is null || given.Contains(null))
        {
            return Results.BadRequest();
        }

        return guide.Keep(session, [.. given.OfType<Given>()]) switch
        {
            HandedOver.Refused refused => Results.Json(new { refused.Why }, Options, statusCode: StatusCodes.Status409Conflict),
            HandedOver.Kept { NotAnswers: var no } => Answered(no),
            _ => Results.StatusCode(StatusCodes.Status500InternalServerError),
        };

        IResult Answered(ImmutableArray<string> notAnswers)
        {
            if (!notAnswers.IsEmpty)
            {
                request.HttpContext.Response.Headers[NotAnswers] = string.Join(',', notAnswers.Select(Uri.EscapeDataString));
            }

            return Results.Json(guide.Records.Entries(session.Id, after ?? 0), Options);
        }
    }
}

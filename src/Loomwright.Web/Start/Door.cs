using System.Net;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace Loomwright.Web.Start;

/// <summary>
/// Who may come in. On this machine: everybody who calls it by its own name. From the network: who has the link, once; from
/// then on a cookie no script can read. Every attack it turns away stands in docs/security.md.
/// </summary>
/// <param name="folder">The folder served. What phones that are in show is kept for a day, so that a program started on it again knows them; null: nobody comes from the network.</param>
internal sealed class Door(string? folder)
{
    /// <summary>Where the link leads: <c>/in/TOKEN</c>.</summary>
    public const string Way = "/in/";

    private const string CookieName = "loomwright";

    private const int Bits = 192;

    private static readonly string[] OwnNames = ["127.0.0.1", "localhost", "[::1]"];

    // What is in the cookie is not what is in the link: a photograph of one does not give the other.
    private readonly string _cookie = folder is null ? Random() : Phones.Secret(folder, Random);
    private readonly Tries _tries = new(most: 10, within: TimeSpan.FromMinutes(1));
    private readonly Tries _calls = new(most: 1200, within: TimeSpan.FromMinutes(1));

    /// <summary>What the link holds; new at every start.</summary>
    public string Token { get; } = Random();

    /// <summary>Lets a request through, or answers it itself.</summary>
    public async Task Pass(HttpContext context, RequestDelegate further)
    {
        Headers(context.Response.Headers);
        var fromHere = context.Connection.LocalIpAddress is { } local && (local.Equals(IPAddress.Loopback) || local.Equals(IPAddress.IPv6Loopback));
        if (!Names(context, fromHere))
        {
            await Answer(context, StatusCodes.Status400BadRequest, "This program is not called that.");
        }
        else if (!OfOurPages(context.Request))
        {
            await Answer(context, StatusCodes.Status403Forbidden, "Another page asked for this; only the program's own may.");
        }
        else if (fromHere || await Knows(context))
        {
            await further(context);
        }
    }

    private static bool Names(HttpContext context, bool fromHere)
    {
        var host = context.Request.Host;
        return (host.Port is null || host.Port == context.Connection.LocalPort)
            && (fromHere ? OwnNames.Contains(host.Host, StringComparer.OrdinalIgnoreCase) : host.Host == context.Connection.LocalIpAddress?.MapToIPv4().ToString());
    }

    // A browser says which page asks for everything that changes something and for every web socket.
    private static bool OfOurPages(HttpRequest request)
    {
        var origin = request.Headers.Origin;
        return origin.Count == 0 ? request.Headers["Sec-Fetch-Site"].ToString() is not "cross-site" || request.Headers["Sec-Fetch-Mode"].ToString() is "navigate" && HttpMethods.IsGet(request.Method)
            : origin.Count == 1 && string.Equals(origin[0], $"http://{request.Host}", StringComparison.OrdinalIgnoreCase);
    }

    private async Task<bool> Knows(HttpContext context)
    {
        var who = context.Connection.RemoteIpAddress?.ToString() ?? "";
        if (!_calls.Another(who))
        {
            await Answer(context, StatusCodes.Status429TooManyRequests, "Too often. Wait a minute.");
            return false;
        }

        if (context.Request.Path.StartsWithSegments(Way.TrimEnd('/'), StringComparison.Ordinal, out var given))
        {
            await (_tries.IsOver(who) ? Answer(context, StatusCodes.Status429TooManyRequests, "Too many wrong links. Wait a minute.")
                : Same(given.Value?.TrimStart('/') ?? "", Token) ? Welcome(context)
                : Wrong());
            return false;
        }

        if (Same(context.Request.Cookies[CookieName] ?? "", _cookie))
        {
            return true;
        }

        await Answer(context, StatusCodes.Status401Unauthorized, "Open the link, or scan the square, that the program shows on the laptop.");
        return false;

        Task Wrong()
        {
            _tries.Another(who);
            return Answer(context, StatusCodes.Status401Unauthorized, "This link is of an earlier start. Scan the square the program shows now.");
        }
    }

    // A page of its own and not a redirection: what follows is then asked for by us, so the browser sends the cookie.
    private Task Welcome(HttpContext context)
    {
        context.Response.Cookies.Append(CookieName, _cookie, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", IsEssential = true });
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync("""
            <!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="refresh" content="0; url=/"><title>Loomwright</title><p><a href="/">Go on to the bikes</a></p></html>
            """);
    }

    private static Task Answer(HttpContext context, int status, string words)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(words);
    }

    private static void Headers(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";
        headers.XContentTypeOptions = "nosniff";
        // Not "no-referrer": with that a browser does not name our own page as the one that asks.
        headers["Referrer-Policy"] = "same-origin";
        headers.XFrameOptions = "DENY";
    }

    private static bool Same(string given, string ours) =>
        CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(given)), SHA256.HashData(Encoding.UTF8.GetBytes(ours)));

    private static string Random() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bits / 8));
}

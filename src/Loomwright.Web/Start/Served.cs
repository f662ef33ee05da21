using System.Collections.Frozen;
using System.Reflection;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http;

namespace Loomwright.Web.Start;

/// <summary>The style sheet, the symbols and the scripts, kept inside the assembly so that the program works from any folder.</summary>
internal static class Served
{
    private const string Prefix = "served/";

    private static readonly FrozenDictionary<string, byte[]> Files = Assembly.GetExecutingAssembly().GetManifestResourceNames()
        .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
        .ToFrozenDictionary(name => name[Prefix.Length..], Bytes, StringComparer.Ordinal);

    /// <summary>Changes when any of the files does; put behind their address so that no browser shows an old one.</summary>
    public static string Version { get; } = Convert.ToHexStringLower(
        SHA256.HashData([.. Files.OrderBy(f => f.Key, StringComparer.Ordinal).SelectMany(f => f.Value)]))[..12];

    /// <summary>A file as text.</summary>
    public static string Text(string name) => System.Text.Encoding.UTF8.GetString(Files[name]);

    /// <summary>A file as an answer, or "not found".</summary>
    public static IResult Answer(string name, HttpContext context)
    {
        if (!Files.TryGetValue(name, out var bytes))
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "max-age=31536000, immutable";
        return Results.Bytes(bytes, Path.GetExtension(name) switch
        {
            ".css" => "text/css; charset=utf-8",
            ".js" => "text/javascript; charset=utf-8",
            ".svg" => "image/svg+xml",
            _ => "application/octet-stream",
        });
    }

    private static byte[] Bytes(string resource)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}

using System.Security.Cryptography;
using System.Text;
using Loomwright.Text;

namespace Loomwright.OnDisk;

/// <summary>One design as it stands on the disk at the moment it was read.</summary>
/// <param name="Path">How it is called: relative to its folder with <c>/</c>, or as the person typed it.</param>
/// <param name="Sha256">Hash of the bytes in lower-case hex, or null when they could not be read.</param>
/// <param name="Text">The text, or null when it cannot be read.</param>
/// <param name="Trouble">Why there is no text and what to do, to stand after the path and a colon; null when there is one.</param>
public sealed record StoredDesign(string Path, string? Sha256, SourceText? Text, string? Trouble)
{
    /// <summary>What a design's file name ends in.</summary>
    public const string Ending = ".loom.yaml";

    /// <summary>Largest file read: 8 MiB, some hundred times the largest bike known (judgement).</summary>
    public const long LargestBytes = 8 * 1024 * 1024;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a file. <paramref name="shown"/> is what messages call it; default: the path itself. Never throws for what the person can cure.</summary>
    public static StoredDesign Read(string path, string? shown = null)
    {
        var name = shown ?? path;
        if (Directory.Exists(path))
        {
            return Unread($"it is a folder; name a file in it that ends in {Ending}");
        }

        try
        {
            using var file = File.OpenRead(path);
            using var bytes = new MemoryStream();
            var chunk = new byte[64 * 1024];
            for (var got = file.Read(chunk); got > 0; got = file.Read(chunk))
            {
                bytes.Write(chunk, 0, got);
                if (bytes.Length > LargestBytes)
                {
                    return Unread($"it is larger than {LargestBytes / 1024 / 1024} MiB, too large to be a design");
                }
            }

            return Decode(name, bytes.ToArray());
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Unread("there is no such file; look at the spelling and the folder");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Unread($"it cannot be opened: {e.Message}");
        }

        StoredDesign Unread(string trouble) => new(name, null, null, trouble);
    }

    private static StoredDesign Decode(string name, byte[] bytes)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        try
        {
            return new(name, hash, new SourceText(name, Strict.GetString(bytes)), null);
        }
        catch (DecoderFallbackException)
        {
            return new(name, hash, null, "it is not UTF-8 text; save it as UTF-8 in your editor");
        }
    }
}

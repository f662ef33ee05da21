using System.Security.Cryptography;

namespace Loomwright.Live;

/// <summary>
/// Puts new bytes in a file's place so that at every moment, also when the machine stops, the file is whole: the old or the new.
/// One of these at a time to a file.
/// </summary>
internal static class SafeSave
{
    /// <summary>Replaces the file if it still has the bytes of that hash; false, and nothing done, when it has others.</summary>
    public static bool Replace(string path, byte[] bytes, string expectedSha256)
    {
        var prepared = Prepare(path, bytes);
        if (Hash(File.ReadAllBytes(path)) != expectedSha256)
        {
            File.Delete(prepared);
            return false;
        }

        File.Move(prepared, path, overwrite: true);
        return true;
    }

    /// <summary>Writes the new bytes beside the file, durably and with its mode; gives their path. What an earlier stop left there is replaced.</summary>
    public static string Prepare(string path, byte[] bytes)
    {
        var beside = Path.Combine(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}.saving");
        File.Delete(beside);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = File.GetUnixFileMode(path);
        }

        using (var file = new FileStream(beside, options))
        {
            file.Write(bytes);
            file.Flush(flushToDisk: true);
        }

        if (!OperatingSystem.IsWindows())
        {
            // What the system's mask took away at making comes back.
            File.SetUnixFileMode(beside, File.GetUnixFileMode(path));
        }

        return beside;
    }

    public static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}

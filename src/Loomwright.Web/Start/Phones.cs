using System.Security;
using System.Security.Cryptography;
using System.Text;

namespace Loomwright.Web.Start;

/// <summary>
/// What the cookie of a phone that is in holds. It outlives the program by at most a day: after a stop the phone goes on
/// without a new scan. It is kept among the person's own files, so that nothing that came along with a folder is taken for it.
/// </summary>
internal static class Phones
{
    private const UnixFileMode OwnerReadsAndWrites = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private static readonly TimeSpan Lasts = TimeSpan.FromDays(1);

    /// <summary>Where a folder's is kept; only its owner reads it. Null for who has no files of their own.</summary>
    public static string? Place(string folder) =>
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify) is { Length: > 0 } own
            ? Path.Combine(own, "loomwright", "phones", Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Path.GetFullPath(folder)))))
            : null;

    /// <summary>The secret of the last start if it is fresh, else a new one, kept where that can be.</summary>
    public static string Secret(string folder, Func<string> random)
    {
        var made = random();
        if (Place(folder) is not { } place)
        {
            return made;
        }

        try
        {
            var all = new DirectoryInfo(Path.GetDirectoryName(place)!);
            if (OperatingSystem.IsWindows())
            {
                all.Create();
            }
            else
            {
                Directory.CreateDirectory(all.FullName, OwnerReadsAndWrites | UnixFileMode.UserExecute);
            }

            foreach (var stale in all.EnumerateFiles().Where(f => DateTime.UtcNow - f.LastWriteTimeUtc is var age && (age < TimeSpan.Zero || age >= Lasts)))
            {
                stale.Delete();
            }

            return File.Exists(place) && File.ReadAllText(place) is var kept && kept.Length == made.Length ? kept : Keep(place, made);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or SecurityException)
        {
            // It cannot be kept: phones scan again after a stop.
            return made;
        }
    }

    private static string Keep(string place, string made)
    {
        File.Delete(place);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerReadsAndWrites;
        }

        using var writer = new StreamWriter(place, options);
        writer.Write(made);
        return made;
    }
}

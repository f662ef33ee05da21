using System.Security;

namespace Loomwright.Web.Start;

/// <summary>What the cookie of a phone that is in holds. It outlives the program by at most a day: after a stop the phone goes on without a new scan.</summary>
internal static class Phones
{
    /// <summary>Name of the file in the folder; only its owner reads it.</summary>
    public const string FileName = ".loomwright.phones";

    private static readonly TimeSpan Lasts = TimeSpan.FromDays(1);

    /// <summary>The secret of the last start if it is fresh, else a new one, kept where that can be.</summary>
    public static string Secret(string folder, Func<string> random)
    {
        var file = new FileInfo(Path.Combine(folder, FileName));
        var made = random();
        try
        {
            if (file.Exists && file.LinkTarget is null && DateTime.UtcNow - file.LastWriteTimeUtc < Lasts && File.ReadAllText(file.FullName) is var kept && kept.Length == made.Length)
            {
                return kept;
            }

            file.Delete();
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
            {
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            }

            using var writer = new StreamWriter(file.FullName, options);
            writer.Write(made);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or SecurityException)
        {
            // A folder that cannot be written: phones scan again after a stop.
        }

        return made;
    }
}

namespace Loomwright.Live;

/// <summary>The right to write in one folder, held by one program at a time. It goes with the program, also when that is killed.</summary>
internal sealed class FolderLock(string folder) : IDisposable
{
    /// <summary>Name of the empty file that is held open; it stays when nobody holds it.</summary>
    public const string FileName = ".loomwright.lock";

    // Sharing violation on Windows; EWOULDBLOCK on Linux and on macOS.
    private static readonly int[] Taken = [unchecked((int)0x80070020), 11, 35];

    private readonly Lock _gate = new();
    private FileStream? _held;

    /// <summary>Takes the right if it is free. Null when we have it, else why not, with the cure.</summary>
    public string? Claim()
    {
        lock (_gate)
        {
            try
            {
                _held ??= new FileStream(Path.Combine(folder, FileName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
                return null;
            }
            catch (IOException e) when (Taken.Contains(e.HResult))
            {
                return "Read-only here: another running Loomwright has this folder. Change it there, or stop that one.";
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return "Read-only here: this folder cannot be written. Give yourself the right to write in it, or copy it.";
            }
        }
    }

    public void Dispose()
    {
        lock (_gate)
        {
            _held?.Dispose();
            _held = null;
        }
    }
}

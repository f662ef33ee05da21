using System.Collections.Concurrent;
using System.Diagnostics;
using Loomwright.OnDisk;

namespace Loomwright.Live;

/// <summary>A folder of designs with one live document for each file somebody looks at. Disposing it gives the right to write away.</summary>
public sealed class LiveFolder : IDisposable
{
    /// <summary>How often a file somebody watches is looked at for what other programs wrote.</summary>
    public static readonly TimeSpan Between = TimeSpan.FromMilliseconds(400);

    private readonly ConcurrentDictionary<string, FolderLock> _rights = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<LiveDocument>> _documents = new(StringComparer.Ordinal);
    private readonly Timer _watch;

    /// <summary>Opens a folder, for writing when no other program has it.</summary>
    public LiveFolder(string folder)
    {
        Path = System.IO.Path.GetFullPath(folder);
        _watch = new Timer(_ => Look(), null, Between, Timeout.InfiniteTimeSpan);
        _ = ReadOnly;
    }

    /// <summary>The folder's full path.</summary>
    public string Path { get; }

    /// <summary>Why nothing can be written in the folder itself; null when it can.</summary>
    public string? ReadOnly => Directory.Exists(Path) ? Right(Path).Claim() : null;

    /// <summary>The folder as it stands on the disk now.</summary>
    public Workspace Open() => Workspace.Open(Path);

    /// <summary>The live document of a listed path, with what the disk holds taken in; null when none is listed or it was never text.</summary>
    public LiveDocument? Find(string path)
    {
        if (_documents.TryGetValue(path, out var known))
        {
            known.Value.Recheck();
            return known.Value;
        }

        var workspace = Open();
        return workspace.Reread(path) is { } stored ? Of(workspace, stored) : null;
    }

    /// <summary>The live document of a design just read from the folder; null when it was never text.</summary>
    public LiveDocument? Of(Workspace workspace, StoredDesign stored)
    {
        if (!_documents.TryGetValue(stored.Path, out var known))
        {
            if (stored.Text is null)
            {
                return null;
            }

            var file = System.IO.Path.Combine(workspace.Folder, stored.Path);
            var alone = workspace with { Designs = [stored with { Text = null }] };
            known = _documents.GetOrAdd(stored.Path, path =>
                new(() => new LiveDocument(file, stored, () => alone.Reread(path)!, Right(System.IO.Path.GetDirectoryName(file)!))));
        }

        if (known.Value.Current.Sha256 != stored.Sha256)
        {
            known.Value.Recheck();
        }

        return known.Value;
    }

    public void Dispose()
    {
        _watch.Dispose();
        foreach (var right in _rights.Values)
        {
            right.Dispose();
        }
    }

    private FolderLock Right(string folder) => _rights.GetOrAdd(folder, f => new FolderLock(f));

    private void Look()
    {
        foreach (var document in _documents.Values.Where(d => d.IsValueCreated && d.Value.IsWatched))
        {
            Glance(document.Value);
        }

        try
        {
            _watch.Change(Between, Timeout.InfiniteTimeSpan);
        }
        catch (ObjectDisposedException)
        {
            // The folder was closed meanwhile; nobody is left to be told.
        }
    }

    // A fault of ours in one document must not end the program, and with it the others' sessions: whoever opens that design
    // meets the same fault and is told.
    private static void Glance(LiveDocument document)
    {
        try
        {
            document.Glance();
        }
        catch (Exception fault)
        {
            Trace.TraceError(fault.ToString());
        }
    }
}

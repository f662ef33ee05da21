using Loomwright.Live;
using Loomwright.OnDisk;
using Loomwright.Sessions;

namespace Loomwright.Web.Bikes;

/// <summary>The folder being served. Every page looks at the one live document of a design, so all of them agree.</summary>
public sealed class Garage : IDisposable
{
    private readonly LiveFolder _live;

    /// <summary>Opens the folder.</summary>
    public Garage(string folder)
    {
        _live = new(folder);
        Guide = new(_live);
    }

    /// <summary>The guided sessions at the bench, with what they keep.</summary>
    public Guide Guide { get; }

    /// <summary>Why nothing can be written here; null when it can.</summary>
    public string? ReadOnly => _live.ReadOnly;

    /// <summary>The folder as it stands now.</summary>
    public Workspace Open() => _live.Open();

    /// <summary>The bike of a design that could be read as text.</summary>
    public Bike? Read(Workspace workspace, StoredDesign stored) => Readable(_live.Of(workspace, stored))?.Current.Bike;

    /// <summary>The bike at that path, or null when the folder lists none or it cannot be read.</summary>
    public Bike? Find(string path) => Live(path)?.Current.Bike;

    /// <summary>The live document at that path, or null when the folder lists none or it cannot be read now.</summary>
    public LiveDocument? Live(string path) => Readable(_live.Find(path));

    public void Dispose()
    {
        Guide.Dispose();
        _live.Dispose();
    }

    private static LiveDocument? Readable(LiveDocument? document) => document is { Trouble: null } ? document : null;
}

using System.Collections.Concurrent;
using Loomwright.OnDisk;

namespace Loomwright.Web.Bikes;

/// <summary>The folder being served, read afresh at every visit; a file whose bytes are known is not worked out twice.</summary>
public sealed class Garage(string folder)
{
    private const int MostKept = 64;

    private readonly ConcurrentDictionary<string, Bike> _known = new(StringComparer.Ordinal);

    /// <summary>The folder as it stands now.</summary>
    public Workspace Open() => Workspace.Open(folder);

    /// <summary>The bike of a design that could be read as text.</summary>
    public Bike Read(StoredDesign stored)
    {
        if (_known.Count > MostKept)
        {
            _known.Clear();
        }

        return _known.GetOrAdd(stored.Sha256!, _ => Bike.Read(stored.Text!));
    }

    /// <summary>The bike at that path, or null when the folder lists none or it cannot be read.</summary>
    public Bike? Find(string path) => Open().Reread(path) is { Text: not null, Sha256: not null } stored ? Read(stored) : null;
}

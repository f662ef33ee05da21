using Loomwright.Tests;

[assembly: AssemblyFixture(typeof(OwnFiles))]

namespace Loomwright.Tests;

/// <summary>A place for what a person's programs keep, so that the tests leave nothing among those of who runs them.</summary>
public sealed class OwnFiles : IDisposable
{
    private readonly Folder _folder = new();

    public OwnFiles() => Environment.SetEnvironmentVariable("XDG_DATA_HOME", _folder.Path);

    public void Dispose() => _folder.Dispose();
}

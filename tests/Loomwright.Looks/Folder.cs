namespace Loomwright.Looks;

/// <summary>A copy of the examples that a session may write beside; gone when done with.</summary>
internal sealed class Folder : IDisposable
{
    private readonly DirectoryInfo _at = Directory.CreateTempSubdirectory("loomwright");

    public Folder(string from)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*.loom.yaml", SearchOption.AllDirectories))
        {
            var to = Path.Combine(Name, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
    }

    public string Name => _at.FullName;

    public void Dispose() => _at.Delete(recursive: true);
}

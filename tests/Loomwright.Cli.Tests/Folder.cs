namespace Loomwright.Tests;

/// <summary>A folder that goes when the test does.</summary>
public sealed class Folder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("loomwright").FullName;

    /// <summary>Writes a file and gives its full path.</summary>
    public string Write(string name, string text)
    {
        var path = System.IO.Path.Combine(Path, name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}

using System.Collections.Immutable;

namespace Loomwright.OnDisk;

/// <summary>
/// A folder of designs: every <c>*.loom.yaml</c> in it and in the folders directly below it, as they stood when it was
/// opened. Only files listed here can be read through it; links inside the folder are not followed.
/// </summary>
/// <param name="Folder">The folder's full path.</param>
/// <param name="Designs">What was found, by path.</param>
/// <param name="Message">What to tell when there is nothing to show, in one sentence with the cure; null when there is.</param>
public sealed record Workspace(string Folder, ImmutableArray<StoredDesign> Designs, string? Message)
{
    /// <summary>Opens a folder. A missing or unreadable one gives an empty workspace with its message.</summary>
    public static Workspace Open(string folder)
    {
        var full = Path.GetFullPath(folder);
        if (!Directory.Exists(full))
        {
            return new(full, [], File.Exists(full)
                ? $"{folder} is a file; name the folder it stands in"
                : $"there is no folder {folder}; make it, or name another");
        }

        try
        {
            var designs = Listed(full).Select(path => Read(full, path)).ToImmutableArray();
            return new(full, designs, designs.IsEmpty
                ? $"there is no design in {folder} or the folders in it; a design's file name ends in {StoredDesign.Ending}"
                : null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(full, [], $"{folder} cannot be listed: {e.Message}");
        }
    }

    /// <summary>The listed design of that path read afresh, or null when none is listed under it.</summary>
    public StoredDesign? Reread(string path)
    {
        var listed = Designs.FirstOrDefault(d => string.Equals(d.Path, path, StringComparison.Ordinal));
        return listed is null ? null : Read(Folder, listed.Path);
    }

    private static StoredDesign Read(string folder, string path)
    {
        var file = new FileInfo(Path.Combine(folder, path));
        return IsLink(file) || (path.Contains('/', StringComparison.Ordinal) && IsLink(file.Directory!))
            ? new(path, null, null, "it is a link and is not followed")
            : StoredDesign.Read(file.FullName, path);
    }

    private static IEnumerable<string> Listed(string folder)
    {
        var root = new DirectoryInfo(folder);
        return root.EnumerateDirectories()
            .Where(d => d.Name[0] != '.' && !IsLink(d))
            .Prepend(root)
            .SelectMany(Designs)
            .Where(f => !IsLink(f))
            .Select(f => Path.GetRelativePath(folder, f.FullName).Replace('\\', '/'))
            .Order(StringComparer.Ordinal);

        static IEnumerable<FileInfo> Designs(DirectoryInfo d) => d.EnumerateFiles(
            "*" + StoredDesign.Ending,
            new EnumerationOptions { IgnoreInaccessible = true, MatchCasing = MatchCasing.CaseInsensitive });
    }

    // Where a link ends can change between the look and the read, so none inside the folder is followed.
    private static bool IsLink(FileSystemInfo entry) => entry.LinkTarget is not null;
}

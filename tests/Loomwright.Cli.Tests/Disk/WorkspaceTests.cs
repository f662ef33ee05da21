using System.Security.Cryptography;
using Loomwright.OnDisk;

namespace Loomwright.Tests.Disk;

public sealed class WorkspaceTests
{
    [Fact]
    public void Designs_are_found_in_the_folder_and_one_level_down_in_order()
    {
        using var folder = new Folder();
        folder.Write("b.loom.yaml", "name: b");
        folder.Write("a/a.loom.yaml", "name: a");
        folder.Write("a/deeper/no.loom.yaml", "name: no");
        folder.Write("notes.yaml", "name: no");
        var workspace = Workspace.Open(folder.Path);
        Assert.Equal(["a/a.loom.yaml", "b.loom.yaml"], workspace.Designs.Select(d => d.Path));
        Assert.Null(workspace.Message);
    }

    [Fact]
    public void The_hash_is_of_the_bytes_as_they_stand()
    {
        using var folder = new Folder();
        var bytes = "\ufeffname: Möwe\r\n"u8.ToArray();
        File.WriteAllBytes(Path.Combine(folder.Path, "m.loom.yaml"), bytes);
        var design = Assert.Single(Workspace.Open(folder.Path).Designs);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), design.Sha256);
        Assert.Equal("\ufeffname: Möwe\r\n", design.Text!.Content);
    }

    [Fact]
    public void A_design_is_read_afresh_by_its_listed_path_and_by_no_other()
    {
        using var folder = new Folder();
        var path = folder.Write("bikes/b.loom.yaml", "name: before");
        var outside = folder.Write("b.loom.yaml", "name: outside");
        var workspace = Workspace.Open(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, "name: after");
        Assert.Equal("name: after", workspace.Reread("b.loom.yaml")!.Text!.Content);
        Assert.Null(workspace.Reread("../b.loom.yaml"));
        Assert.Null(workspace.Reread(outside));
    }

    [Fact]
    public void A_link_out_of_the_folder_shows_nothing()
    {
        using var folder = new Folder();
        using var elsewhere = new Folder();
        var secret = elsewhere.Write("secret.loom.yaml", "name: secret");
        File.CreateSymbolicLink(Path.Combine(folder.Path, "link.loom.yaml"), secret);
        Directory.CreateSymbolicLink(Path.Combine(folder.Path, "linked"), elsewhere.Path);
        Assert.Empty(Workspace.Open(folder.Path).Designs);
    }

    [Fact]
    public void A_design_that_becomes_a_link_is_not_followed()
    {
        using var folder = new Folder();
        using var elsewhere = new Folder();
        var path = folder.Write("sub/b.loom.yaml", "name: b");
        var workspace = Workspace.Open(folder.Path);
        Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
        elsewhere.Write("b.loom.yaml", "name: secret");
        Directory.CreateSymbolicLink(Path.GetDirectoryName(path)!, elsewhere.Path);
        Assert.Equal("it is a link and is not followed", workspace.Reread("sub/b.loom.yaml")!.Trouble);
    }

    [Fact]
    public void An_empty_folder_and_a_missing_one_say_what_to_do()
    {
        using var folder = new Folder();
        Assert.Contains(".loom.yaml", Workspace.Open(folder.Path).Message, StringComparison.Ordinal);
        Assert.Contains("make it", Workspace.Open(Path.Combine(folder.Path, "none")).Message, StringComparison.Ordinal);
        Assert.Contains("is a file", Workspace.Open(folder.Write("b.loom.yaml", "")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_text_says_how_to_save_it()
    {
        using var folder = new Folder();
        File.WriteAllBytes(Path.Combine(folder.Path, "b.loom.yaml"), [0xff, 0xfe, 0x6e, 0x00]);
        var design = Assert.Single(Workspace.Open(folder.Path).Designs);
        Assert.Null(design.Text);
        Assert.Contains("UTF-8", design.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_too_large_to_be_a_design_is_not_read()
    {
        using var folder = new Folder();
        using (var file = File.Create(Path.Combine(folder.Path, "b.loom.yaml")))
        {
            file.SetLength(StoredDesign.LargestBytes + 1);
        }

        Assert.Contains("too large", Assert.Single(Workspace.Open(folder.Path).Designs).Trouble, StringComparison.Ordinal);
    }
}

using Loomwright.Live;
using Loomwright.OnDisk;

namespace Loomwright.Tests.Live;

public sealed class SavingTests
{
    [Fact]
    public void Byte_order_mark_line_ends_and_the_rights_of_the_file_stay()
    {
        using var paper = new Paper("\ufeff" + Paper.Text.ReplaceLineEndings("\r\n"));
        const UnixFileMode rights = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite | UnixFileMode.OtherRead;
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(paper.File, rights);
        }

        Assert.IsType<Written.Saved>(paper.Document.Apply(paper.Document.Current.Sha256, [Paper.Note("a0", "vorn ü")], "Ann"));
        var expected = "\ufeff" + Paper.Text.ReplaceLineEndings("\r\n").Replace("left", "vorn ü", StringComparison.Ordinal);
        Assert.Equal(System.Text.Encoding.UTF8.GetBytes(expected), File.ReadAllBytes(paper.File));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(rights, File.GetUnixFileMode(paper.File));
        }
    }

    [Fact]
    public void A_program_killed_before_the_new_bytes_are_in_place_leaves_the_old_file_whole_and_the_next_save_works()
    {
        using var paper = new Paper();
        SafeSave.Prepare(paper.File, "half wri"u8.ToArray());
        Assert.Equal(Paper.Text, paper.OnDisk);
        Assert.Single(Workspace.Open(paper.Folder).Designs);
        Assert.IsType<Written.Saved>(paper.Document.Apply(paper.Document.Current.Sha256, [Paper.Note("a0", "front")], "Ann"));
        Assert.Equal(Paper.Text.Replace("left", "front", StringComparison.Ordinal), paper.OnDisk);
        Assert.Equal([".loomwright.lock", Paper.Name], Directory.GetFiles(paper.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_file_that_changed_since_it_was_read_is_not_written_over()
    {
        using var paper = new Paper();
        var hash = paper.Document.Current.Sha256;
        File.WriteAllText(paper.File, "name: other\n");
        Assert.False(SafeSave.Replace(paper.File, "name: mine\n"u8.ToArray(), hash));
        Assert.Equal("name: other\n", paper.OnDisk);
    }

    [Fact]
    public void A_file_marked_read_only_stays_as_it_is()
    {
        using var paper = new Paper();
        var document = paper.Document;
        File.SetAttributes(paper.File, FileAttributes.ReadOnly);
        var refused = Assert.IsType<Written.Refused>(document.Apply(document.Current.Sha256, [Paper.Note("a0", "front")], "Ann"));
        File.SetAttributes(paper.File, FileAttributes.Normal);
        Assert.Contains("read-only", refused.What, StringComparison.Ordinal);
        Assert.Equal(Paper.Text, paper.OnDisk);
    }

    [Fact]
    public void A_file_that_was_taken_away_is_said_and_not_made_again()
    {
        using var paper = new Paper();
        var document = paper.Document;
        File.Delete(paper.File);
        var refused = Assert.IsType<Written.Refused>(document.Apply(document.Current.Sha256, [Paper.Note("a0", "front")], "Ann"));
        Assert.Contains("no such file", refused.What, StringComparison.Ordinal);
        Assert.False(File.Exists(paper.File));
    }

    [Fact]
    public void A_second_program_on_the_folder_reads_but_does_not_write_until_the_first_ends()
    {
        using var paper = new Paper();
        using var second = new LiveFolder(paper.Folder);
        var document = second.Find(Paper.Name)!;
        Assert.Contains("another running Loomwright", second.ReadOnly, StringComparison.Ordinal);
        var refused = Assert.IsType<Written.Refused>(document.Apply(document.Current.Sha256, [Paper.Note("a0", "front")], "Ann"));
        Assert.Equal(second.ReadOnly, refused.What);
        Assert.Equal(Paper.Text, paper.OnDisk);

        Assert.IsType<Written.Saved>(paper.Document.Apply(document.Current.Sha256, [Paper.Note("a0", "rear")], "Ben"));
        Assert.Contains("rear", document.Recheck().Text.Content, StringComparison.Ordinal);
    }

    [Fact]
    public void The_right_to_write_is_free_again_when_the_first_program_has_ended()
    {
        using var folder = new Folder();
        folder.Write(Paper.Name, Paper.Text);
        var first = new LiveFolder(folder.Path);
        using var second = new LiveFolder(folder.Path);
        Assert.NotNull(second.ReadOnly);
        first.Dispose();
        Assert.Null(second.ReadOnly);
        var document = second.Find(Paper.Name)!;
        Assert.IsType<Written.Saved>(document.Apply(document.Current.Sha256, [Paper.Note("a0", "front")], "Ann"));
    }
}

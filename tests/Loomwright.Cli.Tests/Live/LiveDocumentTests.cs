using Loomwright.Live;

namespace Loomwright.Tests.Live;

public sealed class LiveDocumentTests : IDisposable
{
    private readonly Paper _paper = new();

    public void Dispose() => _paper.Dispose();

    [Fact]
    public void An_edit_is_in_the_file_when_it_is_called_saved()
    {
        var saved = Assert.IsType<Written.Saved>(_paper.Document.Apply(Base, [Paper.Note("a0", "front")], "Ann"));
        Assert.Equal(Paper.Text.Replace("left", "front", StringComparison.Ordinal), _paper.OnDisk);
        Assert.Equal(SafeSave.Hash(File.ReadAllBytes(_paper.File)), saved.Now.Sha256);
    }

    [Fact]
    public void Two_who_looked_at_the_same_state_and_change_different_things_both_get_their_change()
    {
        var seen = Base;
        Assert.IsType<Written.Saved>(_paper.Document.Apply(seen, [Paper.NoWire(0)], "Ann"));
        Assert.IsType<Written.Saved>(_paper.Document.Apply(seen, [Paper.Size(1, "2.5")], "Ben"));
        Assert.DoesNotContain("w0", _paper.OnDisk, StringComparison.Ordinal);
        Assert.Contains("w1, from: a1, to: a0, size: 2.5", _paper.OnDisk, StringComparison.Ordinal);
    }

    [Fact]
    public void What_somebody_else_changed_meanwhile_is_not_changed_blindly()
    {
        var seen = Base;
        Assert.IsType<Written.Saved>(_paper.Document.Apply(seen, [Paper.Note("a0", "front")], "Ann"));
        var after = _paper.OnDisk;
        var refused = Assert.IsType<Written.Refused>(_paper.Document.Apply(seen, [Paper.Note("a0", "rear"), Paper.Note("a1", "rear")], "Ben"));
        Assert.Contains("somebody else", refused.What, StringComparison.Ordinal);
        Assert.Equal(after, _paper.OnDisk);
    }

    [Fact]
    public void What_another_program_wrote_is_taken_in_before_an_edit_and_stays()
    {
        var document = _paper.Document;
        var seen = document.Current.Sha256;
        File.WriteAllText(_paper.File, "# a note\n" + Paper.Text.Replace("offside", "starboard", StringComparison.Ordinal));
        Assert.IsType<Written.Saved>(document.Apply(seen, [Paper.Note("a0", "port")], "Ann"));
        Assert.Equal("# a note\n" + Paper.Text.Replace("offside", "starboard", StringComparison.Ordinal).Replace("left", "port", StringComparison.Ordinal), _paper.OnDisk);
        Assert.Equal([ChangeKind.Outside, ChangeKind.Edit], document.Changes.Select(c => c.Kind));
    }

    [Fact]
    public void Undo_takes_back_ones_own_change_and_leaves_what_others_changed_since()
    {
        var document = _paper.Document;
        document.Apply(Base, [Paper.Note("a0", "front")], "Ann");
        document.Apply(Base, [Paper.Note("a1", "rear")], "Ben");
        Assert.IsType<Written.Saved>(document.Undo("Ann"));
        Assert.Equal(Paper.Text.Replace("offside", "rear", StringComparison.Ordinal), _paper.OnDisk);
        Assert.IsType<Written.Refused>(document.Undo("Ann"));
        Assert.IsType<Written.Saved>(document.Redo("Ann"));
        Assert.Equal(Paper.Text.Replace("offside", "rear", StringComparison.Ordinal).Replace("left", "front", StringComparison.Ordinal), _paper.OnDisk);
        Assert.Equal([ChangeKind.Edit, ChangeKind.Edit, ChangeKind.Undo, ChangeKind.Redo], document.Changes.Select(c => c.Kind));
    }

    [Fact]
    public void Undo_of_a_place_somebody_else_changed_since_is_refused()
    {
        _paper.Document.Apply(Base, [Paper.Note("a0", "front")], "Ann");
        _paper.Document.Apply(Base, [Paper.Note("a0", "rear")], "Ben");
        Assert.IsType<Written.Refused>(_paper.Document.Undo("Ann"));
        Assert.Contains("rear", _paper.OnDisk, StringComparison.Ordinal);
    }

    [Fact]
    public void Everybody_who_looks_is_told_and_sees_the_same()
    {
        var (ann, ben) = ("", "");
        using var one = _paper.Document.Subscribe(() => ann = _paper.Document.Current.Sha256);
        using (_paper.Document.Subscribe(() => ben = _paper.Document.Current.Sha256))
        {
            _paper.Document.Apply(Base, [Paper.Note("a0", "front")], "Ann");
        }

        Assert.Equal(Base, ann);
        Assert.Equal(ann, ben);
        _paper.Document.Apply(Base, [Paper.Note("a0", "rear")], "Ann");
        Assert.Equal(Base, ann);
        Assert.NotEqual(ann, ben);
    }

    [Fact]
    public async Task What_another_program_writes_reaches_those_who_look_without_being_asked_for()
    {
        var told = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var document = _paper.Document;
        using var looking = document.Subscribe(told.SetResult);
        await File.WriteAllTextAsync(_paper.File, Paper.Text.Replace("left", "port", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        await told.Task.WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        Assert.Contains("port", document.Current.Text.Content, StringComparison.Ordinal);
        Assert.Equal(LiveDocument.Outside, Assert.Single(document.Changes).Who);
    }

    [Fact]
    public void Edits_from_many_at_once_all_arrive()
    {
        var document = _paper.Document;
        var seen = document.Current.Sha256;
        Parallel.For(0, 24, i => Assert.IsType<Written.Saved>(document.Apply(seen, [Paper.Wire("p" + Paper.Number(i))], Paper.Number(i % 3))));
        Assert.Equal(24, document.Changes.Length);
        Assert.All(Enumerable.Range(0, 24), i => Assert.Contains($"name: p{Paper.Number(i)}\n", _paper.OnDisk, StringComparison.Ordinal));
    }

    [Fact]
    public void A_state_never_seen_here_is_refused_with_what_to_do()
    {
        var refused = Assert.IsType<Written.Refused>(_paper.Document.Apply(new string('0', 64), [Paper.Note("a0", "front")], "Ann"));
        Assert.Contains("load the page again", refused.Cure, StringComparison.Ordinal);
        Assert.Equal(Paper.Text, _paper.OnDisk);
    }

    private string Base => _paper.Document.Current.Sha256;
}

using System.Collections.Immutable;
using System.Text;
using Loomwright.OnDisk;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Live;

/// <summary>
/// The one live state of a design's file in this program. Everybody who looks at the design looks at this, every change goes
/// through it, and nothing is called saved before it is in the file. Safe to call from several threads.
/// </summary>
public sealed class LiveDocument
{
    /// <summary>Who made a change that another program wrote.</summary>
    public const string Outside = "another program";

    private const int MostTries = 5;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly Lock _gate = new();
    private readonly string _file;
    private readonly Func<StoredDesign> _read;
    private readonly FolderLock _right;
    private readonly History _history;
    private ImmutableList<Action> _told = [];
    private string? _coming;

    internal LiveDocument(string file, StoredDesign stored, Func<StoredDesign> read, FolderLock right)
    {
        (_file, _read, _right) = (file, read, right);
        Path = stored.Path;
        Current = new Revision(stored.Sha256!, Bike.Read(stored.Text!));
        _history = new History();
    }

    /// <summary>The design's path in its folder.</summary>
    public string Path { get; }

    /// <summary>What the file held when it was last written or looked at.</summary>
    public Revision Current { get; private set; }

    /// <summary>Why the file on the disk cannot be taken in now, in a few words after the path; null when it can.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Why nothing can be written here, in a sentence or two; null when it can.</summary>
    public string? ReadOnly => _right.Claim();

    /// <summary>Everything that changed since it was opened, oldest first.</summary>
    public ImmutableArray<Change> Changes
    {
        get
        {
            lock (_gate)
            {
                return _history.Changes;
            }
        }
    }

    internal bool IsWatched => !_told.IsEmpty;

    /// <summary>Has something told after every change, on any thread; what stands now is in <see cref="Current"/>. Disposing ends it.</summary>
    public IDisposable Subscribe(Action changed)
    {
        // Each its own, so that the same thing subscribed twice ends once.
        var told = new Action(() => changed());
        ImmutableInterlocked.Update(ref _told, (list, one) => list.Add(one), told);
        return new Ending(() => ImmutableInterlocked.Update(ref _told, (list, one) => list.Remove(one), told));
    }

    /// <summary>Looks at the file and takes in what another program wrote.</summary>
    public Revision Recheck() => Doing(() =>
    {
        TakeIn();
        return Current;
    });

    /// <summary>Looks at the file now and then, and takes in what another program wrote once two looks found the same: it may still be writing.</summary>
    internal void Glance() => Doing(() =>
    {
        var found = _read().Sha256;
        if (found == _coming || found == Current.Sha256)
        {
            TakeIn();
        }

        _coming = found;
        return Current;
    });

    /// <summary>
    /// Makes edits that were chosen while looking at the text of <paramref name="baseSha256"/>: all or none. What others
    /// changed elsewhere since stays; when they changed the same thing, it is refused.
    /// </summary>
    /// <param name="baseSha256">Hash of the text that was looked at; paths are of it.</param>
    /// <param name="edits">What to change.</param>
    /// <param name="who">Whose undo takes it back.</param>
    public Written Apply(string baseSha256, IReadOnlyList<Edit> edits, string who) => Doing(() => Write(who, ChangeKind.Edit, () =>
    {
        if (_history.Since(baseSha256, Current) is not { } past)
        {
            return new EditOutcome.Refused("this was chosen on a state of the file that is not known here any more", "load the page again and choose anew");
        }

        return past.Since.Count == 0 ? Current.Bike.Edit(edits)
            : Current.Bike.Carry(past.Seen, past.Since, edits) is { } carried ? Current.Bike.Edit(carried)
            : new EditOutcome.Refused("what should be changed was changed by somebody else meanwhile", "look at it as it now is and choose anew");
    }));

    /// <summary>Takes the person's last change back that is not taken back yet; what others changed since stays.</summary>
    public Written Undo(string who) => Doing(() => Back(ChangeKind.Undo, who));

    /// <summary>Makes again what the person last took back.</summary>
    public Written Redo(string who) => Doing(() => Back(ChangeKind.Redo, who));

    private Written Back(ChangeKind kind, string who) => Write(who, kind, () =>
    {
        if (_history.Next(kind, who) is not { } at)
        {
            return new EditOutcome.Refused(kind == ChangeKind.Undo ? "there is nothing to take back" : "there is nothing to make again", "change something first");
        }

        var (change, later) = (_history.Changes[at], _history.Changes[(at + 1)..]);
        if (Inverse.After(Inverse.Of(change), later) is not { } replacements)
        {
            return new EditOutcome.Refused("the same place was changed again by somebody else", "change it by hand as it now is");
        }

        var text = new SourceText(Path, Inverse.Applied(Current.Text.Content, replacements));
        return later.IsEmpty || Said.IsUndone(change.Before, later[0].Before, Current.Text, text)
            ? new EditOutcome.Edited(text, replacements)
            : new EditOutcome.Refused("what others wrote beside it since does not let it be taken back alone", "change it by hand as it now is");
    });

    private Written Write(string who, ChangeKind kind, Func<EditOutcome> make)
    {
        if (ReadOnly is { } why)
        {
            return new Written.Refused(why, "nothing was written");
        }

        for (var tries = 0; tries < MostTries; tries++)
        {
            TakeIn();
            if (Trouble is not null)
            {
                return new Written.Refused($"{Path}: {Trouble}", "nothing was written");
            }

            switch (make())
            {
                case EditOutcome.Refused no:
                    return new Written.Refused(no.What, no.Cure);
                case EditOutcome.Edited made:
                    var (stored, trouble) = Store(made.Text);
                    if (stored is not null)
                    {
                        Add(who, kind, made.Replacements, stored);
                        return new Written.Saved(Current);
                    }

                    if (trouble is not null)
                    {
                        return new Written.Refused($"{Path} could not be saved: {trouble}", "nothing was changed in it; put that right and try again");
                    }

                    break;
            }
        }

        return new Written.Refused($"{Path} is being written by another program again and again", "let that finish and try again");
    }

    // Neither when another program wrote the file in between.
    private (Revision? Stored, string? Trouble) Store(SourceText text)
    {
        var bytes = Utf8.GetBytes(text.Content);
        try
        {
            return new FileInfo(_file).IsReadOnly ? (null, "the file is marked read-only")
                : SafeSave.Replace(_file, bytes, Current.Sha256) ? (new Revision(SafeSave.Hash(bytes), Bike.Read(text)), null)
                : (null, null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, e.Message);
        }
    }

    private void TakeIn()
    {
        var stored = _read();
        Trouble = stored.Trouble;
        if (stored.Text is { } text && stored.Sha256 != Current.Sha256)
        {
            Add(Outside, ChangeKind.Outside, Difference.Between(Current.Text.Content, text.Content), new Revision(stored.Sha256!, Bike.Read(text)));
        }
    }

    private void Add(string who, ChangeKind kind, ImmutableArray<Replacement> replacements, Revision next)
    {
        if (next.Sha256 != Current.Sha256)
        {
            _history.Add(new Change(Current.Sha256, Current.Text, replacements, who, kind, next.Sha256));
            Current = next;
        }
    }

    // Told outside the lock: whoever is told may well ask for something here.
    private T Doing<T>(Func<T> what)
    {
        T result;
        bool changed;
        lock (_gate)
        {
            var before = (Current, Trouble);
            result = what();
            changed = before != (Current, Trouble);
        }

        if (changed)
        {
            _told.ForEach(told => told());
        }

        return result;
    }

    private sealed class Ending(Action end) : IDisposable
    {
        public void Dispose() => end();
    }
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>A part of the file: what the owner calls it, and the part and its model when it could be made out.</summary>
internal sealed record PartRead(string Name, Part? Part, Model? Model);

/// <summary>Every part the file names, also those that could not be made out.</summary>
internal sealed record PartsRead(ImmutableArray<PartRead> All)
{
    private readonly Dictionary<string, PartRead> _byName = All.ToDictionary(p => p.Name, Names.Comparer);

    /// <summary>A slip in the writing may have taken parts away: a name that is missing here is then no news.</summary>
    public bool IsPartial { get; init; }

    public PartRead? Find(string name) => _byName.GetValueOrDefault(name);

    public IEnumerable<Model> Models => All.Where(p => p.Model is not null).Select(p => p.Model!);
}

/// <summary>Reads the parts by what their kinds declare.</summary>
internal static class PartsReader
{
    public static PartsRead Read(Node? node, bool isPartial, ImmutableArray<Place> places, Found found)
    {
        var parts = ImmutableArray.CreateBuilder<PartRead>();
        foreach (var entry in Sections.Map(node, "parts", found))
        {
            if (OwnerName.Check(entry.Key, found))
            {
                parts.Add(One(entry, places, found));
            }
        }

        var read = new PartsRead(parts.ToImmutable()) { IsPartial = isPartial };
        CheckJoints(node, read, found);
        return read;
    }

    // What a part sits on must be another part, and one point.
    private static void CheckJoints(Node? node, PartsRead parts, Found found)
    {
        foreach (var part in parts.All.Where(p => p.Model?.Joints.IsEmpty == false))
        {
            var told = (node as Node.Map)?.Find(part.Name)?.Value as Node.Map;
            if ((told?.Find("mounted on") ?? told?.Find("joined to"))?.Value is Node.Scalar word)
            {
                TerminalReader.Read(word, parts, found);
            }
        }
    }

    private static PartRead One(Entry entry, ImmutableArray<Place> places, Found found)
    {
        var name = entry.Key.Text;
        var owner = $"“{NodeReader.Short(name)}”";
        if (KindOf(entry, owner, found) is not { } kind)
        {
            return new PartRead(name, null, null);
        }

        var map = (Node.Map)entry.Value;
        var known = Known(kind);
        var settings = FormReader.Keys(map, known, owner, found);
        var place = settings.Word("place") is { } written ? PlacesReader.Known(written, map.Find("place")!.Value, places, found) : null;
        var own = settings.Entries.Where(e => !Names.Same(e.Key, "kind") && !Names.Same(e.Key, "place"));
        var part = new Part(name, kind.Name, place, new Settings([.. own]));
        var clean = !found.StopsWithin(map.Span);
        var model = kind.Build(part);
        if (clean)
        {
            foreach (var problem in model.Problems)
            {
                Tell(problem, entry, owner, found);
            }
        }

        return new PartRead(name, part, model);
    }

    /// <summary>The kind's own settings and those any part may have; where both name a key the kind's counts.</summary>
    public static ImmutableArray<Parameter> Known(Kind kind) =>
        [.. Grammar.AnyPart.Where(p => !kind.Parameters.Any(k => Names.Same(k.Key, p.Key))), .. kind.Parameters];

    private static Kind? KindOf(Entry entry, string owner, Found found)
    {
        if (entry.Value is not Node.Map map)
        {
            FormReader.WrongShape(entry.Value is Node.Scalar { IsEmpty: true } ? entry.Key : entry.Value, owner, "keys with values below its name, “kind” among them", found);
            return null;
        }

        if (map.Find("kind") is not { } kind)
        {
            if (found.IsBrokenWithin(map.Span))
            {
                return null;
            }

            found.Stop(
                "key-missing",
                entry.Key.Span,
                "{owner} has no “{key}”",
                "it cannot be understood without: {meaning}",
                "add a line “{key}: …”",
                Evidence.Of("owner", owner),
                Evidence.Of("key", "kind"),
                Evidence.Of("meaning", Grammar.AnyPart[0].Meaning));
            return null;
        }

        if (FormReader.Word(kind.Value, "kind", found) is not { } word)
        {
            return null;
        }

        if (Kinds.Find(word.Text.Trim()) is { } known)
        {
            return known;
        }

        found.Stop(
            "unknown-kind",
            word.Span,
            "{owner} is a “{kind}”, which is not a known kind",
            "what a part does is told by its kind",
            "{cure}",
            Evidence.Of("owner", owner),
            Evidence.Of("kind", NodeReader.Short(word.Text)),
            Evidence.Of("cure", Suggestion.For(word.Text, [.. Kinds.All.Select(k => k.Name)])));
        return null;
    }

    private static void Tell(Problem problem, Entry entry, string owner, Found found) => found.Stop(
        "setting-cannot-be-used",
        At(problem.Path, entry),
        "{owner}: {what}",
        "the part cannot do what is written",
        "{cure}",
        Evidence.Of("owner", owner),
        Evidence.Of("what", problem.What),
        Evidence.Of("cure", problem.Cure));

    // As far down the path as the file goes.
    private static Span At(string path, Entry entry)
    {
        var at = entry;
        foreach (var key in Steps(path))
        {
            if ((at.Value as Node.Map)?.Find(key) is not { } next)
            {
                break;
            }

            at = next;
        }

        return ReferenceEquals(at, entry) || at.Value.Span.Length is 0 or > 200 ? at.Key.Span : at.Value.Span;

        // A name of the owner's may itself have a stroke in it: the longest that is there wins.
        IEnumerable<string> Steps(string whole)
        {
            var rest = whole.Split('/');
            var map = entry.Value as Node.Map;
            for (var from = 0; from < rest.Length && map is not null;)
            {
                var taken = Enumerable.Range(1, rest.Length - from).Reverse().FirstOrDefault(n => map.Find(string.Join('/', rest, from, n)) is not null);
                if (taken == 0)
                {
                    yield break;
                }

                var key = string.Join('/', rest, from, taken);
                yield return key;
                map = map.Find(key)!.Value as Node.Map;
                from += taken;
            }
        }
    }
}

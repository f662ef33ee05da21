using System.Collections.Immutable;
using System.Diagnostics;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Reads nodes by the forms that grammar and kinds declare, reporting everything that does not fit.</summary>
internal static class FormReader
{
    /// <summary>The settings of a map by its known keys; what cannot be read is reported and left out. Keys that begin with <c>x-</c> are the owner's.</summary>
    public static Settings Keys(Node node, IReadOnlyList<Parameter> known, string owner, Found found)
    {
        if (node is not (Node.Map or Node.Scalar { IsEmpty: true }))
        {
            WrongShape(node, owner, "keys with values, one below the other", found);
            return Settings.None;
        }

        var map = node as Node.Map ?? new Node.Map([], node.Span, Flow: false);
        var read = ImmutableArray.CreateBuilder<KeyValuePair<string, Value>>();
        foreach (var entry in map.Entries)
        {
            if (entry.Key.Text.StartsWith("x-", StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            if (known.FirstOrDefault(p => Names.Same(p.Key, entry.Key.Text)) is not { } parameter)
            {
                UnknownKey(entry.Key, [.. known.Select(p => p.Key)], owner, found);
            }
            else if (Read(entry.Value, parameter.Form, parameter.Key, found) is { } value)
            {
                read.Add(KeyValuePair.Create(parameter.Key, value));
            }
        }

        Missing(map, known, owner, found);
        return new Settings(read.ToImmutable());
    }

    /// <summary>Reports every key that must be there and is not, unless a slip of writing in the same stretch may have cost it.</summary>
    public static void Missing(Node.Map map, IEnumerable<Parameter> known, string owner, Found found)
    {
        foreach (var missing in known.Where(p => p.Required && map.Find(p.Key) is null && !found.IsBrokenWithin(map.Span)))
        {
            found.Stop(
                "key-missing",
                map.Span with { Length = Math.Min(map.Span.Length, 40) },
                "{owner} has no “{key}”",
                "it cannot be understood without: {meaning}",
                "add a line “{key}: …”",
                Evidence.Of("owner", owner),
                Evidence.Of("key", missing.Key),
                Evidence.Of("meaning", missing.Meaning));
        }
    }

    /// <summary>The value of a node, or null when it was reported.</summary>
    public static Value? Read(Node node, Form form, string key, Found found)
    {
        switch (form)
        {
            case Form.Quantity quantity:
                return Word(node, key, found) is { } typed ? Quantity(typed, quantity, key, found) : null;
            case Form.Choice choice:
                return Word(node, key, found) is { } chosen ? Choice(chosen, choice.Options, key, found) : null;
            case Form.Text or Form.Condition:
                return Word(node, key, found) is { } text ? new Value.Word(text.Text.Trim()) : null;
            case Form.Names:
                return Words(node, key, found) is { } words ? new Value.Words(words) : null;
            case Form.Pairs:
                return Pairs(node, key, found);
            case Form.Each each:
                return Each(node, each.Entry, key, found);
            case Form.Keys keys:
                return new Value.Group(Keys(node, keys.Parameters, "“" + key + "”", found));
            default:
                throw new UnreachableException();
        }
    }

    /// <summary>The one word a node must be, or null when it was reported.</summary>
    public static Node.Scalar? Word(Node node, string key, Found found)
    {
        if (node is Node.Scalar { IsEmpty: false } word)
        {
            return word;
        }

        if (node is Node.Scalar)
        {
            found.Look(
                "nothing-written",
                node.Span,
                "nothing is written after “{key}”",
                "it counts as left out",
                "write a value, or delete the line",
                Evidence.Of("key", key));
        }
        else
        {
            WrongShape(node, "“" + key + "”", "one value on the same line", found);
        }

        return null;
    }

    /// <summary>A list of names; a single word counts as a list of one.</summary>
    public static ImmutableArray<string>? Words(Node node, string key, Found found)
    {
        if (node is Node.List list)
        {
            return [.. list.Items.Select(i => Word(i, key, found)).Where(w => w is not null && OwnerName.Check(w, found)).Select(w => w!.Text.Trim())];
        }

        return Word(node, key, found) is { } word && OwnerName.Check(word, found) ? [word.Text.Trim()] : null;
    }

    public static void UnknownKey(Node.Scalar key, IReadOnlyCollection<string> known, string owner, Found found) => found.Look(
        "unknown-key",
        key.Span,
        "“{key}” is not known in {owner}",
        "it is read over, so what it says does not count",
        "{cure} A key of your own begins with x-.",
        Evidence.Of("key", NodeReader.Short(key.Text)),
        Evidence.Of("owner", owner),
        Evidence.Of("cure", Suggestion.For(key.Text, known)));

    public static void WrongShape(Node node, string owner, string wanted, Found found) => found.Stop(
        "wrong-shape",
        node.Span with { Length = Math.Min(node.Span.Length, 80) },
        "{owner} should be {wanted}",
        "what stands here cannot be read as that",
        "see the file format, or compare with an example",
        Evidence.Of("owner", owner),
        Evidence.Of("wanted", wanted));

    private static Value.Number? Quantity(Node.Scalar word, Form.Quantity form, string key, Found found)
    {
        var written = NodeReader.Short(word.Text);
        var typed = Typed.Read(word.Text, form.Unit);
        if (typed is Typed.Unreadable unreadable)
        {
            found.Stop(
                "unreadable-quantity",
                word.Span,
                "“{written}” cannot be read as “{key}”: {problem}",
                "a quantity is a number with its unit",
                "{cure}",
                Evidence.Of("written", written),
                Evidence.Of("key", key),
                Evidence.Of("problem", unreadable.What),
                Evidence.Of("cure", unreadable.Cure));
            return null;
        }

        var read = (Typed.Quantity)typed;
        if (read.Si < form.Least || read.Si > form.Most)
        {
            found.Stop(
                "quantity-out-of-range",
                word.Span,
                "“{written}” is out of range for “{key}”: {least} to {most}",
                "a number this far off is a slip of the keyboard or of the unit",
                "check the number and its unit",
                Evidence.Of("written", written),
                Evidence.Of("key", key),
                Evidence.Of("least", TypedUnits.Show(form.Unit, form.Least)),
                Evidence.Of("most", TypedUnits.Show(form.Unit, form.Most)));
            return null;
        }

        if (read.Bare)
        {
            found.Note(
                "unit-left-out",
                word.Span,
                "“{key}: {written}” has no unit and is taken as {taken}",
                "the same number in another unit is another thing",
                "write {taken}",
                Evidence.Of("key", key),
                Evidence.Of("written", written),
                Evidence.Of("taken", $"{word.Text.Trim()} {TypedUnits.Documented(form.Unit)}"));
        }

        return new Value.Number(read.Si);
    }

    private static Value.Word? Choice(Node.Scalar word, ImmutableArray<string> options, string key, Found found)
    {
        if (options.FirstOrDefault(o => Names.Same(o, word.Text)) is { } known)
        {
            return new Value.Word(known);
        }

        found.Stop(
            "unknown-choice",
            word.Span,
            "“{written}” is not one of the words for “{key}”",
            "only these are understood: {options}",
            "{cure}",
            Evidence.Of("written", NodeReader.Short(word.Text)),
            Evidence.Of("key", key),
            Evidence.Of("options", string.Join(", ", options)),
            Evidence.Of("cure", Suggestion.For(word.Text, options)));
        return null;
    }

    private static Value.Pairs? Pairs(Node node, string key, Found found)
    {
        if (node is Node.Scalar { IsEmpty: true })
        {
            return new Value.Pairs([]);
        }

        if (node is not Node.List list)
        {
            WrongShape(node, "“" + key + "”", "a list of pairs, [[r, s], [t, u]]", found);
            return null;
        }

        var pairs = ImmutableArray.CreateBuilder<(string, string)>();
        foreach (var item in list.Items)
        {
            if (item is Node.List { Items: [Node.Scalar { IsEmpty: false } a, Node.Scalar { IsEmpty: false } b] })
            {
                pairs.Add((a.Text.Trim(), b.Text.Trim()));
            }
            else
            {
                WrongShape(item, "each item of “" + key + "”", "a pair of two names, [r, s]", found);
            }
        }

        return new Value.Pairs(pairs.ToImmutable());
    }

    private static Value.Group? Each(Node node, Form form, string key, Found found)
    {
        if (node is Node.Scalar { IsEmpty: true })
        {
            return new Value.Group(Settings.None);
        }

        if (node is not Node.Map map)
        {
            WrongShape(node, "“" + key + "”", "your names with values, one below the other", found);
            return null;
        }

        var read = ImmutableArray.CreateBuilder<KeyValuePair<string, Value>>();
        foreach (var entry in map.Entries)
        {
            if (OwnerName.Check(entry.Key, found) && Read(entry.Value, form, entry.Key.Text, found) is { } value)
            {
                read.Add(KeyValuePair.Create(entry.Key.Text, value));
            }
        }

        return new Value.Group(new Settings(read.ToImmutable()));
    }
}

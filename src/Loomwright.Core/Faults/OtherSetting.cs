using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>A setting of a part that stands otherwise than the design says.</summary>
internal static class OtherSetting
{
    private const char Stroke = '/';

    /// <summary>Every key of a part whose value can be written in a line: its own, and those within keys the owner has written.</summary>
    public static IEnumerable<string> KeysOf(Part part) =>
        Kinds.Find(part.Kind) is { } kind ? kind.Parameters.SelectMany(p => Forms(p.Key, p.Form, part.Settings[p.Key])).Select(f => f.Path) : [];

    /// <summary>The words one of which stands at a key of a part; none where it is no choice.</summary>
    public static ImmutableArray<string> Options(Part part, string key) =>
        Kinds.Find(part.Kind) is { } kind && kind.Parameters.SelectMany(p => Forms(p.Key, p.Form, part.Settings[p.Key])).FirstOrDefault(f => Names.Same(f.Path, key)).Form is Form.Choice choice ? choice.Options : [];

    /// <summary>What the design has at a key of a part, as one writes it; null where its file gives no figure and no word there.</summary>
    public static string? Designed(Part part, string key) =>
        Kinds.Find(part.Kind)?.Parameters.SelectMany(p => Forms(p.Key, p.Form, part.Settings[p.Key])).FirstOrDefault(f => Names.Same(f.Path, key)) switch
        {
            { Form: Form.Quantity figure, Value: Value.Number number } => Amount.Shown(number.Si, figure.Unit),
            { Value: Value.Word word } => word.Text,
            _ => null,
        };

    /// <summary>The part with that value there; null when the key or the value cannot be used.</summary>
    public static Part? In(Part part, string key, string written) =>
        Kinds.Find(part.Kind) is { } kind && In(new Form.Keys(kind.Parameters), new Value.Group(part.Settings), key, written) is Value.Group group
            ? part with { Settings = group.Entries }
            : null;

    private static IEnumerable<(string Path, Form Form, Value? Value)> Forms(string path, Form form, Value? value) => form switch
    {
        Form.Each each => Entries(value).SelectMany(e => Forms(path + Stroke + e.Key, each.Entry, e.Value)),
        Form.Keys keys => keys.Parameters.SelectMany(p => Forms(path + Stroke + p.Key, p.Form, Entries(value).FirstOrDefault(e => Names.Same(e.Key, p.Key)).Value)),
        Form.Pairs => [],
        _ => [(path, form, value)],
    };

    private static ImmutableArray<KeyValuePair<string, Value>> Entries(Value? value) => value is Value.Group group ? group.Entries.Entries : [];

    private static Value? In(Form form, Value? before, string key, string written)
    {
        if (key.Length == 0)
        {
            return Read(form, written);
        }

        // The longest name that begins the key: a name of the owner's may hold a stroke.
        var names = form switch
        {
            Form.Keys keys => keys.Parameters.Select(p => (p.Key, p.Form)),
            Form.Each each => Entries(before).Select(e => (e.Key, each.Entry)),
            _ => [],
        };
        foreach (var (name, inner) in names.OrderByDescending(n => n.Key.Length))
        {
            var folded = Names.Fold(name);
            if (Names.Fold(key) is var whole && (whole == folded || whole.StartsWith(folded + Stroke, StringComparison.Ordinal)))
            {
                var own = before is Value.Group group ? group.Entries : Settings.None;
                var rest = whole == folded ? "" : whole[(folded.Length + 1)..];
                return In(inner, own[name], rest, written) is { } value ? new Value.Group(Replaced(own, name, value)) : null;
            }
        }

        return null;
    }

    // In its old place: the order of inputs and outputs is the order on the case.
    private static Settings Replaced(Settings settings, string key, Value value) => settings[key] is null
        ? settings.With(key, value)
        : new Settings([.. settings.Entries.Select(e => Names.Same(e.Key, key) ? KeyValuePair.Create(e.Key, value) : e)]);

    private static Value? Read(Form form, string written) => form switch
    {
        Form.Quantity q => Typed.Read(written, q.Unit) is Typed.Quantity typed && typed.Si >= q.Least && typed.Si <= q.Most ? new Value.Number(typed.Si) : null,
        Form.Choice c => c.Options.FirstOrDefault(o => Names.Same(o, written)) is { } option ? new Value.Word(option) : null,
        Form.Names => new Value.Words([.. written.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)]),
        Form.Text or Form.Condition => new Value.Word(written),
        _ => null,
    };
}

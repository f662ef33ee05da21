using Loomwright.Design;
using Loomwright.Parts;

namespace Loomwright.Tests.Parts;

/// <summary>Parts as a file would give them.</summary>
internal static class Given
{
    public static Model Model(string kind, params (string Key, Value Value)[] settings) =>
        Kinds.Find(kind)!.Build(new Part("it", kind, null, Settings(settings)));

    public static Settings Settings(params (string Key, Value Value)[] settings) => new([.. settings.Select(s => KeyValuePair.Create(s.Key, s.Value))]);

    public static Value Si(double value) => new Value.Number(value);

    public static Value Word(string text) => new Value.Word(text);

    public static Value Words(params string[] names) => new Value.Words([.. names]);

    public static Value Pairs(params (string, string)[] pairs) => new Value.Pairs([.. pairs]);

    public static Value Group(params (string Key, Value Value)[] settings) => new Value.Group(Settings(settings));
}

using System.Collections.Immutable;
using System.ComponentModel;
using System.Diagnostics;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Answers;

/// <summary>What <c>list kinds</c> answers.</summary>
public sealed class KindsAnswer(ImmutableArray<Kind> kinds) : Answer("list-kinds", null)
{
    public ImmutableArray<KindAnswer> Kinds { get; } = [.. kinds.Select(k => new KindAnswer(k.Name, k.Meaning, ParameterAnswer.Of(k.Parameters)))];
}

/// <summary>A kind of part.</summary>
public sealed record KindAnswer(string Name, string Meaning, ImmutableArray<ParameterAnswer> Parameters);

/// <summary>Something the file may say of a part.</summary>
public sealed record ParameterAnswer(string Key, string Meaning, bool Required, FormAnswer Form)
{
    public static ImmutableArray<ParameterAnswer> Of(ImmutableArray<Parameter> parameters) =>
        [.. parameters.Select(p => new ParameterAnswer(p.Key, p.Meaning, p.Required, FormAnswer.Of(p.Form)))];
}

/// <summary>What may stand under a key; what its form does not use is null.</summary>
public sealed record FormAnswer(
    [property: Description("quantity, choice, text, condition, names, pairs, each or keys.")] string Type,
    [property: Description("Unit of a quantity; a bare number is taken in it.")] Unit? Unit,
    [property: Description("Least allowed, in the unit; null when any.")] double? Least,
    [property: Description("Most allowed, in the unit; null when any.")] double? Most,
    [property: Description("The words of a choice.")] ImmutableArray<string>? Options,
    [property: Description("What stands under each of the owner's own names.")] FormAnswer? Entry,
    [property: Description("The keys of a set of known keys.")] ImmutableArray<ParameterAnswer>? Keys)
{
    public static FormAnswer Of(Form form) => form switch
    {
        Form.Quantity q => new("quantity", q.Unit, Finite(q.Least), Finite(q.Most), null, null, null),
        Form.Choice c => new("choice", null, null, null, c.Options, null, null),
        Form.Text => Plain("text"),
        Form.Condition => Plain("condition"),
        Form.Names => Plain("names"),
        Form.Pairs => Plain("pairs"),
        Form.Each e => new("each", null, null, null, null, Of(e.Entry), null),
        Form.Keys k => new("keys", null, null, null, null, null, ParameterAnswer.Of(k.Parameters)),
        _ => throw new UnreachableException(),
    };

    private static FormAnswer Plain(string form) => new(form, null, null, null, null, null, null);

    private static double? Finite(double bound) => double.IsFinite(bound) ? bound : null;
}

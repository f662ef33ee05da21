using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>One of some words a kind asks for; the first is taken when none is given.</summary>
internal sealed record Pick(string Key, string Meaning, ImmutableArray<string> Options)
{
    /// <summary>True when the owner must choose; the first is then no default worth naming.</summary>
    public bool Required { get; init; }

    /// <summary>As published; the default is added to its meaning.</summary>
    public Parameter Parameter => new(Key, Required ? Meaning : $"{Meaning} Default {Options[0]}.", new Form.Choice(Options)) { Required = Required };

    /// <summary>The option given, in our spelling; the first when none was given or it is not one of them (the reader has complained).</summary>
    public string Of(Settings settings) => settings.Word(Key) is { } word ? Options.FirstOrDefault(o => Names.Same(o, word), Options[0]) : Options[0];
}

using System.Collections.Immutable;
using Loomwright.Design;

namespace Loomwright.Parts;

/// <summary>A kind of part: what it is called, what it asks of the owner, and what it gives to the simulation.</summary>
/// <param name="Name">As written in the file: <c>fuse</c>.</param>
/// <param name="Meaning">One sentence in the owner's words.</param>
/// <param name="Parameters">What the file may say of it, in the order documented.</param>
/// <param name="Build">Makes the model of one part of this kind. Never throws: what it cannot use it reports as a <see cref="Problem"/>.</param>
public sealed record Kind(string Name, string Meaning, ImmutableArray<Parameter> Parameters, Func<Part, Model> Build);

/// <summary>One thing the file may say of a part. The project file reads, checks and converts by it; the published schema is made from it.</summary>
/// <param name="Key">As written in the file.</param>
/// <param name="Meaning">What it is, its unit and its default, in one sentence.</param>
/// <param name="Form">What may stand there.</param>
public sealed record Parameter(string Key, string Meaning, Form Form)
{
    /// <summary>True when a part of the kind cannot be understood without it.</summary>
    public bool Required { get; init; }
}

/// <summary>What may stand under a key.</summary>
public abstract record Form
{
    private Form()
    {
    }

    /// <summary>A quantity with its unit; a bare number is taken in <paramref name="Unit"/> and noted. Bounds are in SI, both included.</summary>
    public sealed record Quantity(Quantities.Unit Unit, double Least, double Most) : Form;

    /// <summary>One of some words.</summary>
    public sealed record Choice(ImmutableArray<string> Options) : Form;

    /// <summary>Any text.</summary>
    public sealed record Text : Form;

    /// <summary>A condition in the small language; kept as text.</summary>
    public sealed record Condition : Form;

    /// <summary>A list of names.</summary>
    public sealed record Names : Form;

    /// <summary>A list of pairs of names: <c>[[r, s], [t, u]]</c>.</summary>
    public sealed record Pairs : Form;

    /// <summary>The owner's own names, each with the same form under it.</summary>
    public sealed record Each(Form Entry) : Form;

    /// <summary>A set of known keys.</summary>
    public sealed record Keys(ImmutableArray<Parameter> Parameters) : Form;
}

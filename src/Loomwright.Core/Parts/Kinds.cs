using System.Collections.Immutable;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>Every kind of part a file may name.</summary>
public static class Kinds
{
    /// <summary>In the order listed.</summary>
    public static ImmutableArray<Kind> All { get; } = [];

    /// <summary>The kind of that name, or null.</summary>
    public static Kind? Find(string name) => All.FirstOrDefault(k => Names.Same(k.Name, name));
}

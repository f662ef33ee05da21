using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Faults;

namespace Loomwright.Dictionary;

/// <summary>What a dictionary is made for. All of it can be left out.</summary>
public sealed record DictionaryOptions
{
    /// <summary>What is done; null: <see cref="Stimuli.Usual"/>, for the whole bike.</summary>
    public ImmutableArray<Stimulus>? Stimuli { get; init; }

    /// <summary>Where a meter may be put; null: the terminals of all loads, and supply and ground of the boxes.</summary>
    public ImmutableArray<TerminalRef>? Points { get; init; }

    /// <summary>The faults; null: the catalogue of the loom.</summary>
    public ImmutableArray<ListedFault>? Faults { get; init; }

    /// <summary>What is known of how the loom was made.</summary>
    public PriorOptions Priors { get; init; } = new();

    /// <summary>The loom by which full light is measured; null: the loom itself. A stage on the bench names its whole bike.</summary>
    public Loom? FullLight { get; init; }

    /// <summary>How many threads work. The answer does not depend on it.</summary>
    public int Workers { get; init; } = Environment.ProcessorCount;

    /// <summary>Ends the work early; then <see cref="OperationCanceledException"/> is thrown.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>False simulates every fault, each as a circuit of its own, through every stimulus to the end: the looks are the same.</summary>
    internal bool Shortcuts { get; init; } = true;
}

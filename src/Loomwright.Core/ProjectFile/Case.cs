using System.Collections.Immutable;

namespace Loomwright.ProjectFile;

/// <summary>A fault that somebody met and told of. Its words are still as written: whoever has the design reads them against it.</summary>
/// <param name="Account">Title of the account.</param>
/// <param name="Grade">C: cause found and the repair worked. R: a maker's recall. H: a rule told by the trade.</param>
/// <param name="Cause">Text ids of the faults, together.</param>
/// <param name="Saw">What was seen, each time with power connected anew.</param>
/// <param name="Accept">Repairs that count as naming the cause.</param>
/// <param name="NamedBy">Text ids of listed faults that are the same work, where the cause itself is not listed so.</param>
/// <param name="Notes">How the account was put into a circuit, and what was judged.</param>
internal sealed record Case(
    string Account,
    string Grade,
    ImmutableArray<string> Cause,
    ImmutableArray<Sighting> Saw,
    ImmutableArray<string> Accept,
    ImmutableArray<string> NamedBy,
    string? Notes);

/// <summary>What was seen after some operations.</summary>
/// <param name="Do">In this order: <c>lock=riding</c>, <c>wait 3 s</c>.</param>
/// <param name="See">Where somebody looked, and what was there.</param>
/// <param name="Mended">Those of the causes that were mended by then.</param>
internal sealed record Sighting(ImmutableArray<string> Do, ImmutableArray<Told> See, ImmutableArray<string> Mended);

/// <summary>One thing that was seen or read.</summary>
/// <param name="What">A part, <c>part.element</c>, a wire, or two terminals with “to” between them; <c>any of</c> and several of these where the account does not tell which.</param>
/// <param name="Words">All of them hold: <c>dim</c>, <c>9 V to 10 V</c>, <c>above 7 A</c>.</param>
internal sealed record Told(string What, ImmutableArray<string> Words);

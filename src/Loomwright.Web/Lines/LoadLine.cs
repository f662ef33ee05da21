using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;

namespace Loomwright.Web.Lines;

/// <summary>The way of one load from supply plus to supply minus, as the file draws it: stations with a wire between each two.</summary>
/// <param name="Sight">The load's name as in a frame: <c>part</c> or <c>part.element</c>.</param>
/// <param name="Stations">From supply plus to supply minus; empty when the file draws no whole way.</param>
/// <param name="Wires">One fewer than the stations; null where metal sits on metal.</param>
public sealed record LoadLine(string Sight, ImmutableArray<Station> Stations, ImmutableArray<Wire?> Wires);

/// <summary>A part the way goes through.</summary>
/// <param name="Part">The part.</param>
/// <param name="Model">What it is.</param>
/// <param name="In">Where the way enters it.</param>
/// <param name="Out">Where it leaves; the same point for a stud, a splice or the supply.</param>
/// <param name="Through">The element between the two, or null.</param>
public sealed record Station(Part Part, Model Model, TerminalRef In, TerminalRef Out, Element? Through);

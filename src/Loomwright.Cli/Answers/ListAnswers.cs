using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What <c>list parts</c> answers.</summary>
public sealed class PartsAnswer(OpenedDesign design) : Answer("list-parts", design)
{
    public ImmutableArray<PartAnswer> Parts { get; } = [.. design.Bike.Loom!.Parts.Select(p => PartAnswer.Of(p))];
}

/// <summary>A part with its terminals in the order they stand on the case.</summary>
public sealed record PartAnswer(
    string Name,
    string Kind,
    [property: Description("Where it is on the bike, or null.")] string? Place,
    ImmutableArray<TerminalAnswer> Terminals)
{
    public static PartAnswer Of(Part part) => new(
        part.Name,
        part.Kind,
        part.Place,
        [.. Bike.Model(part).Terminals.Select(t => new TerminalAnswer(t.Mark, t.Role, t.Name, t.Plug))]);
}

/// <summary>A terminal: the mark on the case, and the owner's name beside it.</summary>
public sealed record TerminalAnswer(
    [property: Description("Empty for a part that is one point.")] string Mark,
    Role Role,
    string? Name,
    string? Plug);

/// <summary>What <c>list controls</c> answers.</summary>
public sealed class ControlsAnswer(OpenedDesign design) : Answer("list-controls", design)
{
    public ImmutableArray<HandAnswer> Controls { get; } =
        [.. design.Bike.Controls.Select(c => new HandAnswer(c.Name, c.Positions, c.Rest, c.Momentary))];
}

/// <summary>Something a hand operates.</summary>
public sealed record HandAnswer(
    string Name,
    [property: Description("In the order they are reached.")] ImmutableArray<string> Positions,
    [property: Description("Where it is when nobody has touched it.")] string Rest,
    [property: Description("Springs back when let go.")] bool Momentary);

/// <summary>What <c>list faults</c> answers: every single thing that can be wrong with the design.</summary>
public sealed class FaultsAnswer(OpenedDesign design, bool withEffects = false) : Answer("list-faults", design)
{
    public ImmutableArray<FaultAnswer> Faults { get; } = withEffects ? WithEffects(design.Bike) : [.. design.Bike.ListFaults().Select(f => FaultAnswer.Of(f))];

    private static ImmutableArray<FaultAnswer> WithEffects(Bike bike)
    {
        var classes = bike.Dictionary().Entries.SelectMany(e => e.Faults.Select(f => (Id: f.Fault.ToString(), e.Class))).ToDictionary(x => x.Id, x => x.Class, StringComparer.Ordinal);
        var harmful = bike.HarmfulFaults().Select(f => f.ToString()).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. from fault in bike.ListFaults()
               let id = fault.Fault.ToString()
               select FaultAnswer.Of(fault, harmful.Contains(id), classes.TryGetValue(id, out var number) ? number : null),
        ];
    }
}

/// <summary>One possible fault.</summary>
public sealed record FaultAnswer(
    [property: Description("As try --fault takes it.")] string Id,
    [property: Description("open, moved, swapped, lost, short, dead, reversed, high, stuck, leak or setting.")] string Kind,
    [property: Description("The wire, terminal, ground or part it is about.")] string Subject,
    [property: Description("How likely it is before anything was looked at, 0 to 1; a judgement, see docs/faults.md.")] double Prior,
    [property: Description("What sets it right; equal where the same work does.")] string Repair,
    [property: Description("Whether it can harm in some stage of the bench plan; null without --effects.")] bool? Harmful,
    [property: Description("Equal for faults that look alike whatever is operated, 0 for those that change nothing to be seen; null without --effects.")] int? Class)
{
    public static FaultAnswer Of(ListedFault listed, bool? harmful = null, int? @class = null) =>
        new(listed.Fault.ToString(), listed.Fault.Kind, listed.Fault.Subject, listed.Prior(), listed.Repair, harmful, @class);
}

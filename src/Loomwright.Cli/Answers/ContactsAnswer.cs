using System.Collections.Immutable;
using System.ComponentModel;
using Loomwright.Contacts;

namespace Loomwright.Answers;

/// <summary>What <c>contacts</c> answers.</summary>
public sealed class ContactsAnswer(ImmutableArray<string> leads, bool all) : Answer("contacts", null, all)
{
    public ImmutableArray<string> Leads { get; } = leads;

    [Description("In the order of turning; empty for a lamp.")]
    public ImmutableArray<string> Positions { get; init; } = [];

    [Description("How far it is known; what is only likely was not measured. Null for a lamp.")]
    public Known? State { get; init; }

    [Description("Each pair in each position by what was read; for a lamp none.")]
    public ImmutableArray<ContactAnswer> Contacts { get; init; } = [];

    [Description("Common tables still possible, the likeliest first.")]
    public ImmutableArray<CandidateAnswer> Candidates { get; init; } = [];

    [Description("What to touch next; null when there is nothing left to tell.")]
    public NextTouch? Next { get; init; }

    [Description("For a switch: every choice of feed and ground that shorts or was not read to the end, what is inside, what does not fit. For a lamp: what the readings tell.")]
    public ImmutableArray<string> Warnings { get; init; } = [];

    public static ContactsAnswer Of(UnmarkedSwitch read) => new(read.Leads, read.State == Known.Measured)
    {
        Positions = read.Positions,
        State = read.State,
        Contacts = [.. from p in Enumerable.Range(0, read.Positions.Length)
                       from one in Enumerable.Range(0, read.Leads.Length)
                       from other in Enumerable.Range(one + 1, read.Leads.Length - one - 1)
                       select new ContactAnswer(read.Positions[p], [read.Leads[one], read.Leads[other]], read.Measured(p, one, other))],
        Candidates = [.. read.Candidates.Select(c => new CandidateAnswer(c.Name, c.Chance, c.In(read)))],
        Next = read.Next is { } next ? new(read.Positions[next.Position], [read.Leads[next.One], read.Leads[next.Other]], next.Again, Feed: false) : null,
        Warnings = read.Warnings,
    };

    public static ContactsAnswer Of(LampLeads read, ImmutableArray<string> leads) => new(leads, read.Next is null)
    {
        Next = read.Next is { } next ? new(null, [leads[next.Plus], leads[next.Minus]], Again: false, next.Feed) : null,
        Warnings = read.Words,
    };
}

/// <summary>One pair of leads in one position.</summary>
public sealed record ContactAnswer(string Position, ImmutableArray<string> Between, [property: Description("Joined by metal; null when not read.")] bool? Joined);

/// <summary>A common table that is still possible.</summary>
public sealed record CandidateAnswer(
    string Name,
    [property: Description("How likely, 0 to 1.")] double Chance,
    [property: Description("Position to the pairs joined in it.")] IReadOnlyDictionary<string, ImmutableArray<ImmutableArray<string>>> Table);

/// <summary>The next pair to touch.</summary>
public sealed record NextTouch(
    [property: Description("The position to stand in; null for a lamp.")] string? Position,
    [property: Description("The two leads; of a lamp to be fed, plus first.")] ImmutableArray<string> Between,
    [property: Description("It was read before and does not fit the others.")] bool Again,
    [property: Description("Feed 12 V through 1 kΩ in place of measuring.")] bool Feed);

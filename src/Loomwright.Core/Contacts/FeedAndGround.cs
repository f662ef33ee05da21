using System.Collections.Immutable;

namespace Loomwright.Contacts;

/// <summary>What follows when plus comes to one lead and ground to the other, whichever way round.</summary>
/// <param name="One">One lead.</param>
/// <param name="Other">The other lead.</param>
/// <param name="Short">The positions in which that is a dead short.</param>
/// <param name="Unread">The positions in which it was not read whether it is.</param>
public sealed record FeedAndGround(string One, string Other, ImmutableArray<string> Short, ImmutableArray<string> Unread)
{
    /// <summary>In a sentence.</summary>
    public string Words => $"Plus on {One} and ground on {Other}, or the other way round: " + (Short, Unread) switch
    {
        ([], []) => "joined in no position.",
        ([], _) => $"not known yet in {Listed(Unread)}.",
        (_, []) => $"a dead short in {Listed(Short)}.",
        _ => $"a dead short in {Listed(Short)}; not known yet in {Listed(Unread)}.",
    };

    /// <summary>Every choice of two leads for feed and ground, by what was measured and nothing else.</summary>
    public static ImmutableArray<FeedAndGround> Of(UnmarkedSwitch read)
    {
        ImmutableArray<int> leads = [.. Enumerable.Range(0, read.Leads.Length)];
        return [.. leads.SelectMany(one => leads.Where(other => other > one).Select(other =>
            new FeedAndGround(read.Leads[one], read.Leads[other], In(read, one, other, true), In(read, one, other, null))))];
    }

    private static ImmutableArray<string> In(UnmarkedSwitch read, int one, int other, bool? joined) =>
        [.. read.Positions.Where((_, p) => read.Measured(p, one, other) == joined)];

    private static string Listed(ImmutableArray<string> names) => names is [.. [_, ..] first, var last] ? $"{string.Join(", ", first)} and {last}" : names[0];
}

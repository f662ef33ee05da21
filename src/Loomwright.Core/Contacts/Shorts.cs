using System.Collections.Immutable;

namespace Loomwright.Contacts;

/// <summary>What follows when plus comes to one lead and ground to the other.</summary>
/// <param name="Feed">The lead with plus on it.</param>
/// <param name="Ground">The lead with ground on it.</param>
/// <param name="Short">The positions in which that is a dead short.</param>
/// <param name="Unread">The positions in which it was not read whether it is.</param>
public sealed record FeedAndGround(string Feed, string Ground, ImmutableArray<string> Short, ImmutableArray<string> Unread)
{
    /// <summary>In a sentence.</summary>
    public string Words => (Short, Unread) switch
    {
        ([], []) => $"Plus on {Feed}, ground on {Ground}: joined in no position.",
        ([], _) => $"Plus on {Feed}, ground on {Ground}: not known yet in {Listed(Unread)}.",
        (_, []) => $"Plus on {Feed}, ground on {Ground}: a dead short in {Listed(Short)}.",
        _ => $"Plus on {Feed}, ground on {Ground}: a dead short in {Listed(Short)}; not known yet in {Listed(Unread)}.",
    };

    /// <summary>Every choice of feed and ground, either way round, by what was measured and nothing else.</summary>
    public static ImmutableArray<FeedAndGround> Of(UnmarkedSwitch read)
    {
        ImmutableArray<int> leads = [.. Enumerable.Range(0, read.Leads.Length)];
        return [.. leads.SelectMany(feed => leads.Where(ground => ground != feed).Select(ground =>
            new FeedAndGround(read.Leads[feed], read.Leads[ground], In(read, feed, ground, true), In(read, feed, ground, null))))];
    }

    private static ImmutableArray<string> In(UnmarkedSwitch read, int feed, int ground, bool? joined) =>
        [.. read.Positions.Where((_, p) => read.Measured(p, feed, ground) == joined)];

    private static string Listed(ImmutableArray<string> names) => names is [.. var first, var last] && first.Length > 0 ? $"{string.Join(", ", first)} and {last}" : names[0];
}

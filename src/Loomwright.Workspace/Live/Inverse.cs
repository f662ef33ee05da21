using System.Collections.Immutable;
using System.Text;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Live;

/// <summary>Taking a change back after others have followed it.</summary>
internal static class Inverse
{
    /// <summary>What takes the change back on the text it gave.</summary>
    public static ImmutableArray<Replacement> Of(Change change)
    {
        var grown = 0;
        var back = ImmutableArray.CreateBuilder<Replacement>(change.Replacements.Length);
        foreach (var (span, text) in change.Replacements)
        {
            back.Add(new Replacement(new Span(span.Start + grown, text.Length), change.Before.Content.Substring(span.Start, span.Length)));
            grown += text.Length - span.Length;
        }

        return back.MoveToImmutable();
    }

    /// <summary>The same replacements after later changes, or null when one of those touches a stretch of them.</summary>
    public static ImmutableArray<Replacement>? After(ImmutableArray<Replacement> replacements, IEnumerable<Change> later)
    {
        var carried = replacements;
        foreach (var change in later)
        {
            var next = ImmutableArray.CreateBuilder<Replacement>(carried.Length);
            foreach (var mine in carried)
            {
                if (change.Replacements.Any(other => Touch(mine.Span, other.Span)))
                {
                    return null;
                }

                var moved = change.Replacements.Where(other => other.Span.End <= mine.Span.Start).Sum(other => other.Text.Length - other.Span.Length);
                next.Add(mine with { Span = mine.Span with { Start = mine.Span.Start + moved } });
            }

            carried = next.MoveToImmutable();
        }

        return carried;
    }

    public static string Applied(string content, ImmutableArray<Replacement> replacements)
    {
        var made = new StringBuilder();
        var at = 0;
        foreach (var (span, text) in replacements)
        {
            made.Append(content, at, span.Start - at).Append(text);
            at = span.End;
        }

        return made.Append(content, at, content.Length - at).ToString();
    }

    // Side by side is apart, unless one of them is a place between two characters: then nobody could say which comes first.
    private static bool Touch(Span a, Span b) => (a.Length, b.Length) switch
    {
        (0, _) => b.Start <= a.Start && a.Start <= b.End,
        (_, 0) => a.Start < b.Start && b.Start < a.End,
        _ => a.Start < b.End && b.Start < a.End,
    };
}

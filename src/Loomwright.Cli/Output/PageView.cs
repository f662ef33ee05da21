namespace Loomwright.Output;

/// <summary>A page or a list written as plain text with insets, for a screen of any width.</summary>
internal static class PageView
{
    /// <summary>A Markdown page without its signs; what is to be copied stands four columns in.</summary>
    public static void Markdown(Screen screen, string page)
    {
        var copied = false;
        foreach (var line in page.TrimEnd().Split('\n'))
        {
            if (line.StartsWith("```", StringComparison.Ordinal))
            {
                copied = !copied;
            }
            else
            {
                Line(screen, copied ? "    " + line : line.TrimStart('#', ' ').Replace("**", "", StringComparison.Ordinal));
            }
        }
    }

    /// <summary>Text whose lines carry their own insets; what does not fit goes on two columns further in.</summary>
    public static void Inset(Screen screen, string text)
    {
        foreach (var line in text.TrimEnd().Split('\n'))
        {
            Line(screen, line);
        }
    }

    private static void Line(Screen screen, string line)
    {
        var inset = line.Length - line.TrimStart().Length;
        var room = Math.Max(screen.Tables.Profile.Width, inset + 20);
        var start = 0;
        while (line.Length - start > room)
        {
            var cut = line.LastIndexOf(' ', start + room, room - inset);
            cut = cut <= start ? start + room : cut;
            screen.Out.WriteLine((start == 0 ? "" : new string(' ', inset + 2)) + line[start..cut]);
            start = line[cut] == ' ' ? cut + 1 : cut;
            room = Math.Max(screen.Tables.Profile.Width - inset - 2, 20);
        }

        screen.Out.WriteLine((start == 0 ? "" : new string(' ', inset + 2)) + line[start..]);
    }
}

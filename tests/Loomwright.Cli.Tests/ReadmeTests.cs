using System.Text.RegularExpressions;

namespace Loomwright.Tests;

/// <summary>The README's worked example is what the program says today.</summary>
public partial class ReadmeTests
{
    [Fact]
    public void Every_line_the_README_shows_below_a_command_is_in_that_commands_answer_and_in_that_order()
    {
        var shown = Block().Matches(Repository.Read("README.md")).Select(m => m.Groups["shown"].Value.TrimEnd().Split('\n')).ToList();
        Assert.NotEmpty(shown);
        foreach (var lines in shown)
        {
            var answer = Called.With([.. Word().Matches(lines[0]).Skip(1).Select(w => w.Value.Trim('"'))]).Out.Split('\n');
            var at = 0;
            foreach (var line in lines.Skip(1).Where(l => l.Trim() != "…"))
            {
                var found = Array.FindIndex(answer, at, a => a.StartsWith(line, StringComparison.Ordinal));
                Assert.True(found >= 0, $"“{lines[0]}” does not show “{line}”");
                at = found + 1;
            }
        }
    }

    [GeneratedRegex("```\\n\\$ (?<shown>loomwright [^`]*)```", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Block();

    [GeneratedRegex("\"[^\"]*\"|\\S+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Word();
}

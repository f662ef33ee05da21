using Loomwright.Text;

namespace Loomwright.Tests.Text;

public sealed class SourceTextTests
{
    [Theory]
    [InlineData("ab\ncd\n", 3, 2, 1)]
    [InlineData("ab\r\ncd", 4, 2, 1)]
    [InlineData("ab\rcd", 4, 2, 2)]
    [InlineData("ab", 2, 1, 3)]
    [InlineData("ab", 99, 1, 3)]
    [InlineData("ab\n", 3, 2, 1)]
    [InlineData("", 0, 1, 1)]
    public void An_offset_has_the_line_and_column_an_editor_shows(string content, int offset, int line, int column)
    {
        var text = new SourceText("x", content);
        Assert.Equal(new LineColumn(line, column), text.At(offset));
        Assert.Equal(Math.Min(offset, content.Length), text.Offset(new LineColumn(line, column)));
    }

    [Theory]
    [InlineData("Stop  Lamp", "stop lamp", true)]
    [InlineData(" stop lamp ", "STOP\tLAMP", true)]
    [InlineData("Öl", "O\u0308l", true)]
    [InlineData("stoplamp", "stop lamp", false)]
    [InlineData("stop lamp", "stop lamp 2", false)]
    [InlineData("ÖL \u00a0 hot", "öl hot\n", true)]
    public void Names_are_one_when_their_owner_would_say_so(string a, string b, bool same) => Assert.Equal(same, Names.Same(a, b));
}

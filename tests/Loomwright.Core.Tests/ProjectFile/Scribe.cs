using System.Globalization;
using System.Text;

namespace Loomwright.Tests.ProjectFile;

/// <summary>Writes a random file: blocks and braces, comments, blank lines, quotes, either line end, with or without a mark.</summary>
internal sealed class Scribe(Random random)
{
    private readonly StringBuilder _file = new();
    private readonly string _end = random.Next(2) == 0 ? "\n" : "\r\n";
    private readonly int _step = 2 + (2 * random.Next(2));
    private int _comments;

    public string File()
    {
        _file.Append(random.Next(4) == 0 ? "\uFEFF" : "").Append("loomwright: 1").Append(Comment()).Append(_end);
        Map(0, random.Next(1, 5), 3, "");
        return _file.ToString();
    }

    private void Map(int indent, int count, int depth, string firstIndent)
    {
        for (var i = 0; i < count; i++)
        {
            if (i > 0)
            {
                Between(indent);
            }

            _file.Append(i == 0 ? firstIndent : new string(' ', indent)).Append("key ").Append(i.ToString(CultureInfo.InvariantCulture)).Append(random.Next(8) == 0 ? " :" : ":");
            Value(indent, depth, listMayStay: true);
        }
    }

    private void Value(int indent, int depth, bool listMayStay)
    {
        switch (depth == 0 ? random.Next(2) : random.Next(5))
        {
            case 0:
                _file.Append(' ').Append(Scalar(inFlow: false)).Append(Comment()).Append(_end);
                break;
            case 1:
                _file.Append(random.Next(2) == 0 ? Comment() : "").Append(_end);
                break;
            case 2:
                _file.Append(' ').Append(Flow(2)).Append(Comment()).Append(_end);
                break;
            case 3:
                _file.Append(Comment()).Append(_end);
                Between(indent + _step);
                Map(indent + _step, random.Next(1, 4), depth - 1, new string(' ', indent + _step));
                break;
            default:
                _file.Append(Comment()).Append(_end);
                var at = indent + (listMayStay && random.Next(3) == 0 ? 0 : _step);
                for (var n = random.Next(1, 4); n > 0; n--)
                {
                    _file.Append(' ', at).Append('-');
                    if (random.Next(2) == 0)
                    {
                        Map(at + 2, random.Next(1, 4), depth - 1, " ");
                    }
                    else
                    {
                        _file.Append(' ').Append(random.Next(2) == 0 ? Scalar(inFlow: false) : Flow(1)).Append(Comment()).Append(_end);
                    }
                }

                break;
        }
    }

    private string Flow(int depth) => (depth == 0 ? 0 : random.Next(3)) switch
    {
        0 => Scalar(inFlow: true),
        1 => "[" + string.Join(Comma(), Enumerable.Range(0, random.Next(4)).Select(_ => Flow(depth - 1))) + "]",
        _ => "{" + string.Join(Comma(), Enumerable.Range(0, random.Next(4)).Select(i => $"k{i.ToString(CultureInfo.InvariantCulture)}: {Flow(depth - 1)}")) + "}",
    };

    private string Comma() => random.Next(12) == 0 ? ",   " + Remark() + _end + new string(' ', 12) : ", ";

    private string Scalar(bool inFlow)
    {
        var word = EditPropertyTests.Words[random.Next(EditPropertyTests.Words.Length)];
        return word.Length == 0 || word.Any("{#:-,\"'".Contains) || inFlow
            ? random.Next(2) == 0 ? "'" + word.Replace("'", "''", StringComparison.Ordinal) + "'" : "\"" + word.Replace("\"", "\\\"", StringComparison.Ordinal) + "\""
            : word;
    }

    private string Remark() => "# c" + _comments++.ToString(CultureInfo.InvariantCulture);

    private string Comment() => random.Next(4) == 0 ? "  " + Remark() : "";

    private void Between(int indent)
    {
        if (random.Next(5) == 0)
        {
            _file.Append(_end);
        }

        if (random.Next(5) == 0)
        {
            _file.Append(' ', indent).Append(Remark()).Append(_end);
        }
    }
}

using System.Text;
using QRCoder;

namespace Loomwright.Output;

/// <summary>A text as a square a phone can scan, in half blocks, two rows of it in one line.</summary>
internal static class Square
{
    public static string Of(string text)
    {
        using var maker = new QRCodeGenerator();
        using var made = maker.CreateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var rows = made.ModuleMatrix;
        var drawn = new StringBuilder();
        for (var y = 0; y < rows.Count; y += 2)
        {
            for (var x = 0; x < rows.Count; x++)
            {
                // Light is drawn and dark left out: most terminals write light on dark.
                var below = y + 1 < rows.Count && rows[y + 1][x];
                drawn.Append((rows[y][x], below) switch { (true, true) => ' ', (true, false) => '▄', (false, true) => '▀', _ => '█' });
            }

            drawn.Append('\n');
        }

        return drawn.ToString().TrimEnd('\n');
    }
}

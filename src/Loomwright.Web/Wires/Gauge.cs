using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.Web.Wires;

/// <summary>The wire gauge nearest to a size, for those who buy by gauge.</summary>
internal static class Gauge
{
    /// <summary><c>20 AWG</c>; the size itself stays what counts.</summary>
    public static string Near(CrossSection size) =>
        ConductorTable.Awg.Rows.MinBy(r => Math.Abs(Math.Log(r.Size.SquareMillimetres / size.SquareMillimetres)))!.Name;
}

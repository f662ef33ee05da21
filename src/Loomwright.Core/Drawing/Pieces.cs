namespace Loomwright.Drawing;

/// <summary>What parts are drawn of, put together piece by piece, each list in the order it lies on the sheet.</summary>
internal sealed class Pieces
{
    public List<Cell> Cells { get; } = [];

    public List<Pin> Pins { get; } = [];

    public List<Light> Lights { get; } = [];

    public List<CaseLight> CaseLights { get; } = [];

    public List<Sign> Signs { get; } = [];

    public List<Stroke> Strokes { get; } = [];

    public List<Spot> Dots { get; } = [];

    public List<Lettering> Letterings { get; } = [];

    /// <summary>The sheet with all of it; texts behind those it has.</summary>
    public Scene On(Scene scene) => scene with
    {
        Cells = [.. Cells],
        Pins = [.. Pins],
        Lights = [.. Lights],
        CaseLights = [.. CaseLights],
        Signs = [.. Signs],
        Strokes = [.. Strokes],
        Dots = [.. Dots],
        Letterings = [.. scene.Letterings, .. Letterings],
    };
}

namespace Loomwright.Drawing;

/// <summary>Draws what stands on the overview: places, wires with their labels, and the plates.</summary>
internal static class OverviewScene
{
    public static Scene Of(string name, Standing standing)
    {
        var pieces = new Pieces();
        var draw = new PlateDrawing(pieces);
        foreach (var plate in standing.Plates.All)
        {
            draw.Plate(plate, standing.Middle(plate), row => standing.Y(plate, row));
        }

        pieces.Letterings.AddRange(standing.Labels.SelectMany(l => l));
        var uprightness = new Runs(standing.Paths).Uprightness();
        var drawn = standing.Lines.Where(l => standing.Paths[l.Index].Length > 0).OrderBy(l => uprightness[l.Index]);
        return pieces.On(new Scene
        {
            Id = "overview",
            Title = $"{name}: wiring overview",
            About = "left is the rear of the bike, right the front; every wire is a line but the returns, which name their ground",
            Width = standing.Paper.Width,
            Height = standing.Paper.Height,
            Paper = standing.Paper.Name,
            Rooms = [.. standing.Rooms],
            Strands = [.. drawn.Select(l => new Strand(l.Wire.Name, l.Wire.Colour, l.Wire.Size.SquareMillimetres, [.. standing.Paths[l.Index]]))],
            Letterings = [.. standing.Rooms.Select(r => r.Lettering)],
            Flags = [.. standing.Flags],
            Unrouted = [.. standing.Plates.Unrouted],
        });
    }
}

using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Drawing;

/// <summary>Where boxes come to stand: all of them by a search, or one by hand.</summary>
internal static class Places
{
    /// <summary>The whole sheet arranged anew, whatever was moved by hand.</summary>
    public static Placing Arranged(Loom loom, int trials)
    {
        var standing = Overview.Stand(loom with { Placing = Placing.None }, trials);
        var boxes = standing.Plates.All.Select(p => (p.Part.Name, Box: standing.Box(p)));
        return new Placing
        {
            Arranged = new Arranged(loom.Wires.Length, loom.Parts.Length, (int)standing.Spine.Y, (int)standing.Spine.Bottom),
            Boxes = [.. boxes.Select(b => new Placed(b.Name, (int)(b.Box.X + (b.Box.Width / 2)), (int)b.Box.Y))],
        };
    }

    /// <summary>One box with its corner at a spot, or as near as no other box is in its way; null when there is no such part.</summary>
    public static Placing? Moved(Loom loom, string part, int x, int y, int trials)
    {
        var placing = loom.Placing.Arranged is null ? Arranged(loom, trials) : loom.Placing;
        var standing = Overview.Stand(loom with { Placing = placing }, trials);
        if (standing.Plates.All.FirstOrDefault(p => Names.Same(p.Part.Name, part)) is not { } plate)
        {
            return null;
        }

        var free = FreePlace.Edge(standing, plate, new Spot(x + (standing.Box(plate).Width / 2), y), onWires: true);
        var old = placing.Boxes.FirstOrDefault(b => Names.Same(b.Part, part));
        (int X, int Y)? from = plate.IsLate || old is null ? null : old.From ?? (old.X, old.Y);
        var moved = new Placed(plate.Part.Name, (int)free.X, (int)free.Y);
        moved = from == (moved.X, moved.Y) ? moved : moved with { From = from };
        return placing with { Boxes = old is null ? placing.Boxes.Add(moved) : placing.Boxes.Replace(old, moved) };
    }
}

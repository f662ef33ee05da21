using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;

namespace Loomwright.Drawing;

/// <summary>One function as numbered lines through the bands feed, protection, switch, load, return.</summary>
internal static class FunctionSheet
{
    private const double SlotWidth = 128;
    private const double LineHeight = 172;
    private const double MostLineHeight = 230;
    private const double MissingHeight = 28;
    private const double Head = 44;
    private const double Caption = 26;
    private const double Wire = 62;

    // Between two stations with room for a label at each end of the wire.
    private const double RoomForTwo = 200;

    public static Scene Of(Loom loom, Function function)
    {
        var (lines, missing) = FunctionLines.Of(loom, function);
        var slots = Enum.GetValues<Band>().Select(b => Math.Max(1, lines.Select(l => l.Bands.Count(x => x == b)).DefaultIfEmpty(0).Max())).ToArray();
        var paper = Paper.For(slots.Sum() * SlotWidth, Head + (lines.Count * LineHeight) + (missing.Count * MissingHeight));
        var slot = paper.BodyWidth / slots.Sum();
        var lineHeight = Math.Clamp((paper.BodyHeight - Head - (missing.Count * MissingHeight)) / Math.Max(1, lines.Count), LineHeight, MostLineHeight);
        var pieces = new Pieces();
        var drawing = new StationDrawing(pieces, slot);
        var strands = new List<Strand>();
        var labels = new List<Lettering>();
        for (var i = 0; i < lines.Count; i++)
        {
            var top = Paper.Top + Head + (i * lineHeight);
            labels.Add(new Lettering(string.Create(CultureInfo.InvariantCulture, $"{i + 1}   {lines[i].Caption}"), new Spot(Paper.Left + 8, top + Caption), Hold.Start) { Size = 19, Bold = true });
            Line(lines[i], top + Wire);
        }

        for (var i = 0; i < missing.Count; i++)
        {
            labels.Add(new Lettering($"{missing[i]}: told over a data lead, or not wired all the way", new Spot(Paper.Left + 8, Paper.Top + Head + (lines.Count * lineHeight) + Caption + (i * MissingHeight)), Hold.Start) { Size = 19, Quiet = true });
        }

        return pieces.On(new Scene
        {
            Id = "function",
            Title = $"{loom.Name}: {function.Name}",
            About = $"works while {function.Works}; drawn at rest; each line is the shortest way, others may exist",
            Width = paper.Width,
            Height = paper.Height,
            Paper = paper.Name,
            Rooms = [.. Rooms(slots, slot, paper)],
            Strands = [.. strands],
            Letterings = [.. BandNames(slots, slot), .. labels],
        });

        void Line(FunctionLine line, double y)
        {
            var middles = Middles(line.Bands, slots, slot);
            var edges = line.Trail.Stations.Select((s, i) => drawing.Station(s, new Spot(middles[i], y), i == 0, i == line.Trail.Stations.Length - 1)).ToList();
            for (var i = 0; i < line.Trail.Wires.Length; i++)
            {
                var (from, to) = (new Spot(middles[i] + edges[i], y), new Spot(middles[i + 1] - edges[i + 1], y));
                if (line.Trail.Wires[i] is not { } wire)
                {
                    pieces.Strokes.Add(new Stroke(from, to));
                    continue;
                }

                var reversed = wire.From != line.Trail.Stations[i].Out;
                strands.Add(new Strand(wire.Name, wire.Colour, wire.Size.SquareMillimetres, reversed ? [to, from] : [from, to]));
                labels.AddRange(Labelled(wire, from, to));
            }
        }
    }

    private static IEnumerable<Lettering> Labelled(Wire wire, Spot from, Spot to)
    {
        var (text, y) = (Labels.Of(wire), from.Y - (Insulation.Body(wire.Size.SquareMillimetres) / 2) - 2.5);
        return to.X - from.X >= RoomForTwo
            ? [new Lettering(text, new Spot(from.X + 4, y), Hold.Start) { Wire = wire.Name }, new Lettering(text, new Spot(to.X - 4, y), Hold.End) { Wire = wire.Name }]
            : [new Lettering(text, new Spot((from.X + to.X) / 2, y), Hold.Middle) { Wire = wire.Name }];
    }

    // The stations of a band stand evenly in it.
    private static double[] Middles(ImmutableArray<Band> bands, int[] slots, double slot)
    {
        var middles = new double[bands.Length];
        for (var i = 0; i < bands.Length; i++)
        {
            var band = bands[i];
            var inside = bands.Count(b => b == band);
            var before = bands.Take(i).Count(b => b == band);
            middles[i] = Left(band, slots, slot) + (slots[(int)band] * slot * (before + 0.5) / inside);
        }

        return middles;
    }

    private static double Left(Band band, int[] slots, double slot) => Paper.Left + (slots.Take((int)band).Sum() * slot);

    private static IEnumerable<Room> Rooms(int[] slots, double slot, Paper paper) =>
        Enum.GetValues<Band>().Where(b => (int)b % 2 == 0).Select(b => new Room(b.ToString(), new Area(Left(b, slots, slot), Paper.Top, slots[(int)b] * slot, paper.BodyHeight)));

    private static IEnumerable<Lettering> BandNames(int[] slots, double slot) =>
        Enum.GetValues<Band>().Select(b => new Lettering(b.ToString().ToLowerInvariant(), new Spot(Left(b, slots, slot) + (slots[(int)b] * slot / 2), Paper.Top + 28), Hold.Middle) { Size = 22.4, Bold = true, Quiet = true });
}

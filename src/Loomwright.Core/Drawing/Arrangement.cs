namespace Loomwright.Drawing;

/// <summary>Where the plates stand: in each column some above the spine and some below, both told from the spine outward.</summary>
internal sealed class Arrangement
{
    public required List<Plate>[] Above { get; init; }

    public required List<Plate>[] Below { get; init; }

    /// <summary>By plate: how many half rows it keeps off what stands nearer to the spine.</summary>
    public required int[] HalfRows { get; init; }

    public int Columns => Above.Length;

    public Arrangement Copy() => new() { Above = [.. Above.Select(c => c.ToList())], Below = [.. Below.Select(c => c.ToList())], HalfRows = [.. HalfRows] };

    /// <summary>A first arrangement: each column ordered by the height of its partners, the upper part above the spine.</summary>
    public static Arrangement First(Plates plates, int columns)
    {
        var made = new Arrangement { Above = Empty(columns), Below = Empty(columns), HalfRows = new int[plates.All.Length] };
        var mean = plates.All.Select(p => (double)p.Index / plates.All.Length).ToArray();
        for (var sweep = 0; sweep < 3; sweep++)
        {
            var next = mean.ToArray();
            foreach (var plate in plates.All.Where(p => p.Ends.Count > 0))
            {
                next[plate.Index] = plates.Lines.Where(l => l.A.Plate == plate || l.B.Plate == plate).Average(l => mean[(l.A.Plate == plate ? l.B : l.A).Plate.Index]);
            }

            mean = next;
        }

        foreach (var column in plates.All.GroupBy(p => p.Column))
        {
            var places = column.GroupBy(p => p.Place).OrderBy(g => g.Average(p => mean[p.Index])).SelectMany(g => g.OrderBy(p => mean[p.Index])).ToList();
            var (half, sum, upper) = (column.Sum(p => p.Rows.Count + 1) * 0.55, 0, new List<Plate>());
            foreach (var plate in places)
            {
                (sum < half ? upper : made.Below[column.Key]).Add(plate);
                sum += plate.Rows.Count + 1;
            }

            upper.Reverse();
            made.Above[column.Key].AddRange(upper);
        }

        return made;
    }

    private static List<Plate>[] Empty(int columns) => [.. Enumerable.Range(0, columns).Select(_ => new List<Plate>())];
}

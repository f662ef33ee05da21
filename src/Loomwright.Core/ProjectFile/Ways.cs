using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>How far a wire runs between places: the shortest way over the declared distances.</summary>
internal sealed class Ways(ImmutableArray<Distance> distances)
{
    /// <summary>Spare on top of the way between places: bends and the reach to the terminals (judgement, no source).</summary>
    public const double Spare = 0.10;

    /// <summary>A wire that stays in one place (judgement, no source).</summary>
    public static readonly Length Inside = new(0.3);

    /// <summary>The shortest way, without spare, or null when the distances do not join the two.</summary>
    public Length? Between(string a, string b)
    {
        var far = new Dictionary<string, double>(Names.Comparer) { [a] = 0 };
        var next = new PriorityQueue<string, double>();
        next.Enqueue(a, 0);
        while (next.TryDequeue(out var at, out var metres))
        {
            if (Names.Same(at, b))
            {
                return new Length(metres);
            }

            foreach (var step in distances)
            {
                if (Other(step, at) is { } other && metres + step.Length.Metres < far.GetValueOrDefault(other, double.PositiveInfinity))
                {
                    far[other] = metres + step.Length.Metres;
                    next.Enqueue(other, far[other]);
                }
            }
        }

        return null;
    }

    private static string? Other(Distance step, string at) => Names.Same(step.A, at) ? step.B : Names.Same(step.B, at) ? step.A : null;
}

using System.Collections.Concurrent;
using System.Collections.Immutable;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>One position for every control. There is one instance for each, so it is known by its reference.</summary>
internal sealed class Setting(Row<int> positions)
{
    private ImmutableArray<Move>? _moves;

    public Row<int> Positions { get; } = positions;

    /// <summary>What one hand can do from here: one control to the position beside it, at most two held that spring back.</summary>
    public ImmutableArray<Move> Moves(Settings all) => _moves ??= all.MovesFrom(this);
}

/// <summary>A control moved to a position beside its own.</summary>
internal readonly record struct Move(int Control, int Position, Setting To);

/// <summary>All settings met so far; for any number of threads.</summary>
internal sealed class Settings(Wiring wiring)
{
    private const int MostHeld = 2;

    private readonly ConcurrentDictionary<Row<int>, Setting> _known = new();
    private readonly ImmutableArray<int> _rest = [.. wiring.Controls.Select(c => Wiring.PlaceOf(c, c.Rest) ?? 0)];

    public int RestOf(int control) => _rest[control];

    /// <summary>Every setting of the controls that stay where put, so many moves away from rest; the others at rest.</summary>
    public IEnumerable<Setting> FromRest(int moves) => Places(0, moves).Select(places => Of(new Row<int>([.. places])));

    /// <summary>The most moves any of those is away from rest.</summary>
    public int Farthest => Enumerable.Range(0, _rest.Length).Sum(FarthestOf);

    public ImmutableArray<Move> MovesFrom(Setting setting)
    {
        var held = Enumerable.Range(0, _rest.Length).Count(c => wiring.Controls[c].Momentary && setting.Positions[c] != _rest[c]);
        return
        [
            .. from c in Enumerable.Range(0, _rest.Length)
               from position in new[] { setting.Positions[c] - 1, setting.Positions[c] + 1 }
               where position >= 0 && position < wiring.Controls[c].Positions.Length
               where !wiring.Controls[c].Momentary || setting.Positions[c] != _rest[c] || held < MostHeld
               select new Move(c, position, Of(setting.Positions.With(c, position))),
        ];
    }

    private Setting Of(Row<int> positions) => _known.GetOrAdd(positions, static p => new Setting(p));

    private int FarthestOf(int control) =>
        wiring.Controls[control].Momentary ? 0 : Math.Max(_rest[control], wiring.Controls[control].Positions.Length - 1 - _rest[control]);

    private IEnumerable<ImmutableList<int>> Places(int control, int moves)
    {
        if (control == _rest.Length)
        {
            return moves == 0 ? [ImmutableList<int>.Empty] : [];
        }

        return from position in Enumerable.Range(0, wiring.Controls[control].Positions.Length)
               let away = Math.Abs(position - _rest[control])
               where away <= Math.Min(moves, FarthestOf(control))
               from others in Places(control + 1, moves - away)
               select others.Insert(0, position);
    }
}

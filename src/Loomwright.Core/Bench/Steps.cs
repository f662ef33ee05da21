using System.Collections.Immutable;

namespace Loomwright.Bench;

/// <summary>Steps of one stage as they are written; numbers them inside their act.</summary>
internal sealed class Steps(int stage)
{
    private readonly ImmutableArray<Step>.Builder _steps = ImmutableArray.CreateBuilder<Step>();

    public void Add(Act act, string text, Func<Step, Step>? more = null)
    {
        var number = _steps.Count(s => s.Act == act) + 1;
        var step = new Step(Id(stage, act, number), act, text);
        _steps.Add(more is null ? step : more(step));
    }

    public ImmutableArray<Step> Finish() => _steps.ToImmutable();

    /// <summary><c>s1.connect.2</c></summary>
    public static string Id(int stage, Act act, int number) => FormattableString.Invariant($"s{stage}.{Slug(act)}.{number}");

    /// <summary>Whether a step's id is of an act.</summary>
    public static bool IsOf(string id, Act act) => id.Split('.') is [_, var slug, ..] && slug == Slug(act);

    private static string Slug(Act act) => act switch
    {
        Act.Fetch => "fetch",
        Act.TakeOut => "take-out",
        Act.Connect => "connect",
        Act.Measure => "measure",
        Act.PowerUp => "power-up",
        Act.Operate => "operate",
        Act.Again => "again",
        Act.PowerDown => "power-down",
        _ => throw new InvalidOperationException("an act of no known form"),
    };
}

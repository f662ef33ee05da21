using System.Collections.Immutable;
using Loomwright.Expressions;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Tests.WholeBikes;

/// <summary>The setting with the fewest controls moved from rest in which a function works, found with its own rule alone.</summary>
internal static class FirstSetting
{
    /// <summary>What stays put first, as a hand would do it: the key before the button. Null when no setting makes it work.</summary>
    public static ImmutableArray<Operation>? Of(IEnumerable<Control> all, Expression works)
    {
        var used = works.NamesUsed().ToHashSet(Names.Comparer);
        var controls = all.Where(c => used.Contains(c.Name)).OrderBy(c => c.Momentary).ToImmutableArray();
        return Enumerable.Range(0, controls.Length + 1)
            .SelectMany(moved => Choices(controls, moved))
            .Where(choice => Works(controls, works, choice))
            .Select(choice => (ImmutableArray<Operation>?)[.. choice.Select(c => new Operation.Set(c.Control, c.Position))])
            .FirstOrDefault();
    }

    private static IEnumerable<ImmutableList<(string Control, string Position)>> Choices(ImmutableArray<Control> controls, int moved) =>
        moved == 0 ? [[]]
        : controls.IsEmpty ? []
        : controls[0].Positions.Where(p => p != controls[0].Rest)
            .SelectMany(p => Choices(controls[1..], moved - 1).Select(rest => rest.Insert(0, (controls[0].Name, p))))
            .Concat(Choices(controls[1..], moved));

    private static bool Works(ImmutableArray<Control> controls, Expression works, ImmutableList<(string Control, string Position)> choice)
    {
        var rule = new Evaluator([works]);
        var at = controls.ToDictionary(c => c.Name, c => c.Rest, Names.Comparer);
        var (levels, memory) = Look(Memory.Fresh);
        foreach (var (control, position) in choice)
        {
            at[control] = position;
            (levels, memory) = Look(memory);
        }

        return levels[0].On;

        (ImmutableArray<Level> Levels, Memory Next) Look(Memory now) =>
            rule.Step(now, name => at[name] != controls.First(c => Names.Same(c.Name, name)).Rest, name => at[name]);
    }
}

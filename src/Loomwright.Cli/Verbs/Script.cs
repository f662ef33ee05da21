using System.Collections.Immutable;
using System.Diagnostics;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Verbs;

/// <summary>The operations typed on a command line, in the order typed.</summary>
/// <param name="Operations">Empty when something could not be read.</param>
/// <param name="Trouble">What could not be read and what there is instead; null when all was.</param>
public sealed record Script(ImmutableArray<Operation> Operations, string? Trouble)
{
    /// <summary>Moves a control and leaves it there.</summary>
    public const string SetOption = "--set";

    /// <summary>Moves a control, or presses one that springs back and lets it go.</summary>
    public const string DoOption = "--do";

    /// <summary>Lets time pass.</summary>
    public const string WaitOption = "--wait";

    /// <summary>Longest time to wait: a day, far beyond any timer on a bike.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromDays(1);

    /// <summary>Reads the words after the verb against the controls the bike has.</summary>
    public static Script Read(IReadOnlyList<string> words, ImmutableArray<Control> controls)
    {
        var operations = ImmutableArray.CreateBuilder<Operation>();
        foreach (var (option, value) in Played(words))
        {
            var (operation, trouble) = option == WaitOption ? Wait(value) : Move(option, value, controls);
            if (operation is null)
            {
                return new([], trouble);
            }

            operations.Add(operation);
        }

        return new(operations.ToImmutable(), null);
    }

    // The parsed settings group the options by name; only the words as typed still know their order.
    private static IEnumerable<(string Option, string Value)> Played(IReadOnlyList<string> words)
    {
        string[] options = [SetOption, DoOption, WaitOption];
        for (var i = 0; i < words.Count; i++)
        {
            if (options.Contains(words[i]) && i + 1 < words.Count)
            {
                yield return (words[i], words[++i]);
            }
            else if (options.FirstOrDefault(o => words[i].StartsWith(o + "=", StringComparison.Ordinal) || words[i].StartsWith(o + ":", StringComparison.Ordinal)) is { } joined)
            {
                yield return (joined, words[i][(joined.Length + 1)..]);
            }
        }
    }

    private static (Operation?, string?) Wait(string value) => Typed.Read(value, Unit.Second) switch
    {
        Typed.Quantity { Si: var s } when s > 0 && s <= LongestWait.TotalSeconds => (new Operation.Wait(TimeSpan.FromSeconds(s)), null),
        Typed.Quantity => (null, $"{WaitOption} {value}: name a time longer than 0 s and at most 24 h"),
        Typed.Unreadable u => (null, $"{WaitOption} {value}: {u.What}; {u.Cure}"),
        _ => throw new UnreachableException(),
    };

    private static (Operation?, string?) Move(string option, string value, ImmutableArray<Control> controls)
    {
        var parts = value.Split('=', 2);
        var control = controls.FirstOrDefault(c => Names.Same(c.Name, parts[0]));
        if (control is null)
        {
            return (null, Choosing.None("control", parts[0], [.. controls.Select(c => c.Name)]));
        }

        if (parts.Length == 1)
        {
            return option == DoOption && control.Momentary
                ? (new Operation.Tap(control.Name), null)
                : (null, $"{option} {value}: say where to, as \"{control.Name}={control.Positions[^1]}\". {Choosing.Instead("positions", "", control.Positions)}");
        }

        return control.Positions.FirstOrDefault(p => Names.Same(p, parts[1])) is { } position
            ? (new Operation.Set(control.Name, position), null)
            : (null, $"{control.Name}: {Choosing.None("position", parts[1], control.Positions)}");
    }
}

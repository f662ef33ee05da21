using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Dictionary;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Diagnosis;

/// <summary>
/// What a person tells in words: <c>lock=riding, front brake=pressed: rear cluster stop=dark</c>; or of a meter,
/// <c>lock=riding: box.X4 to battery.- = 12.4 V</c>.
/// </summary>
/// <param name="Done">What was done; null when nothing is operated for it.</param>
/// <param name="Answer">What was seen or read, its stimulus not yet placed in a table (−1).</param>
public sealed record Report(Stimulus? Done, Evidence Answer)
{
    /// <summary>The answer in a table that knows what was done.</summary>
    public Evidence In(TroubleTable table) => Done is null ? Answer : Answer.At(table.Place(Done) ?? throw new ArgumentException($"the table was made without {Done.Name}", nameof(table)));

    /// <summary>Reads something seen.</summary>
    public static (Report? Report, Problem? Problem) Saw(string text, Loom loom)
    {
        var (done, seen, problem) = Split(text, loom, "lock=riding: tail lamp=dark");
        if (done is null)
        {
            return (null, problem);
        }

        var observables = Viewer.Observables(Wiring.Of(loom));
        var signs = ImmutableArray.CreateBuilder<(int, byte)>();
        foreach (var sign in Listed(seen))
        {
            var words = sign.Split('=', 2, StringSplitOptions.TrimEntries);
            var at = Array.FindIndex([.. observables], o => Names.Same(Plain(o.Name), Plain(words[0])));
            if (at < 0)
            {
                return (null, new Problem(words[0], "nothing that can be seen is called so", Nearest(words[0], observables.Select(o => Words.Name(o.Name)))));
            }

            var known = WordsOf(observables[at]);
            var word = words.Length == 2 ? known.FirstOrDefault(w => Names.Same(w.Word, words[1])) : default;
            if (word.Word is null)
            {
                return (null, new Problem(sign, $"how {Words.Name(observables[at].Name)} is cannot be read", $"write one of: {string.Join(", ", known.Select(w => w.Word))}"));
            }

            signs.Add((at, word.Sign));
        }

        return signs.Count == 0
            ? (null, new Problem(text, "nothing is told of what was seen", "write it after the colon, as “lock=riding: tail lamp=dark”"))
            : (new Report(done, new Evidence.Seen(-1, signs.ToImmutable())), null);
    }

    /// <summary>Reads something measured.</summary>
    public static (Report? Report, Problem? Problem) Read(string text, Loom loom)
    {
        const string example = "lock=riding: box.X4 to battery.- = 12.4 V";
        var (done, read, problem) = Split(text, loom, example);
        if (done is null)
        {
            return (null, problem);
        }

        if (read.Split('=', 2, StringSplitOptions.TrimEntries) is not [var probes, var reading] || probes.Split(" to ", StringSplitOptions.TrimEntries) is not [var red, var black])
        {
            return (null, new Problem(read, "it does not say between which two points what was read", $"write it as “{example}”"));
        }

        var points = TroubleTable.PointsOf(loom);
        foreach (var point in new[] { red, black })
        {
            if (At(points, point) is null)
            {
                return (null, new Problem(point, "no wire ends there", Nearest(point, points.Select(p => p.ToString()))));
            }
        }

        return Typed.Read(reading, Unit.Volt) switch
        {
            Typed.Quantity volts => (new Report(done, new Evidence.Measured(-1, At(points, red)!.Value, IsBatteryMinus(loom, points[At(points, black)!.Value]) ? null : At(points, black), volts.Si)), null),
            Typed.Unreadable bad => (null, new Problem(reading, bad.What, bad.Cure)),
            _ => (null, null),
        };
    }

    /// <summary>Reads what a check of the thing itself found: <c>terminals of box: stop lamp feed sits on box.X3</c>, or <c>as it should be</c>.</summary>
    public static (Report? Report, Problem? Problem) Found(string text, Loom loom)
    {
        var traces = Traces.All(loom);
        if (text.Split(": ", 2, StringSplitOptions.TrimEntries) is not [var check, var found])
        {
            return (null, new Problem(text, "it does not say at which check what was found", "write it as “terminals of box: as it should be”"));
        }

        var there = traces.Where(t => Names.Same(t.Check.Name, check)).ToList();
        return there.Count == 0 ? (null, new Problem(check, "there is no such check", Nearest(check, traces.Select(t => t.Check.Name).Distinct(StringComparer.Ordinal))))
            : Names.Same(found, "not sure") ? (new Report(null, new Evidence.NotSure(new Asked(null, Check: there[0].Check))), null)
            : Names.Same(found, Check.AsDesigned) ? (new Report(null, new Evidence.Checked(there[0].Check, null)), null)
            : there.Find(t => Names.Same(t.Found, found)) is { Check: not null } trace ? (new Report(null, new Evidence.Checked(trace.Check, trace.Found)), null)
            : (null, new Problem(found, "that cannot be found there", Nearest(found, there.Select(t => t.Found).Append(Check.AsDesigned).Distinct(StringComparer.Ordinal))));
    }

    /// <summary>What was done, and that the person could not tell what came of it.</summary>
    public static (Report? Report, Problem? Problem) NotSure(string done, Loom loom) => Did(done, loom) switch
    {
        ({ } stimulus, _) => (new Report(stimulus, new Evidence.NotSure(new Asked(-1))), null),
        (_, var problem) => (null, problem),
    };

    /// <summary>Reads what was done: controls and where they stand, or <c>wait 3 s</c>, a comma between; nothing for power on and all at rest.</summary>
    public static (Stimulus? Done, Problem? Problem) Did(string text, Loom loom)
    {
        var controls = Wiring.Of(loom).Controls;
        var operations = ImmutableArray.CreateBuilder<Operation>();
        foreach (var move in Listed(text))
        {
            if (move.StartsWith("wait ", StringComparison.Ordinal) && Typed.Read(move[5..], Unit.Second) is Typed.Quantity { Si: > 0 and < 86_400 } time)
            {
                operations.Add(new Operation.Wait(TimeSpan.FromSeconds(time.Si)));
                continue;
            }

            var words = move.Split('=', 2, StringSplitOptions.TrimEntries);
            if (controls.FirstOrDefault(c => Names.Same(c.Name, words[0])) is not { } control)
            {
                return (null, new Problem(words[0], "there is no such control", Nearest(words[0], controls.Select(c => c.Name))));
            }

            if (words.Length < 2 || control.Positions.FirstOrDefault(p => Names.Same(p, words[1])) is not { } position)
            {
                return (null, new Problem(move, $"where {control.Name} stands cannot be read", $"write one of: {string.Join(", ", control.Positions.Select(p => $"{control.Name}={p}"))}"));
            }

            operations.Add(new Operation.Set(control.Name, position));
        }

        return (Stimulus.Of(operations.ToImmutable()), null);
    }

    private static (Stimulus? Done, string After, Problem? Problem) Split(string text, Loom loom, string example)
    {
        if (text.Split(':', 2, StringSplitOptions.TrimEntries) is not [var done, var rest])
        {
            return (null, "", new Problem(text, "it does not say what was done before what was seen", $"write it as “{example}”"));
        }

        var (stimulus, problem) = Did(done, loom);
        return (stimulus, rest, problem);
    }

    private static string[] Listed(string text) => text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static string Plain(string name) => Words.Name(name.Trim());

    // What all volts are told against has no place among the points.
    private static bool IsBatteryMinus(Loom loom, TerminalRef point) => Wiring.Of(loom).Nodes[point] == 0;

    private static int? At(ImmutableArray<TerminalRef> points, string written) => points.Select((p, i) => (p, i)).Where(p => Names.Same(p.p.ToString(), written)).Select(p => (int?)p.i).FirstOrDefault();

    private static string Nearest(string typed, IEnumerable<string> names) => Text.Nearest.To(typed, [.. names]) is { } near ? $"did you mean {near}?" : $"write one of: {string.Join(", ", names)}";

    /// <summary>The words a sign may be told in, every one that means something for this observable.</summary>
    public static ImmutableArray<(string Word, byte Sign)> WordsOf(Observable observable) => observable.Sense switch
    {
        Sense.Sight => [.. Enum.GetValues<Symbol>().Select(s => (Words.Written(s), (byte)s))],
        Sense.BoxLight => [("off", (byte)Symbol.Dark), ("on", (byte)Symbol.Lit), ("flashing", (byte)Symbol.Flashing)],
        Sense.Relay => [("released", 0), ("pulled in", 1)],
        _ => [.. new[] { FuseState.Whole, FuseState.Blown, FuseState.Cycling }.Select(s => (s == FuseState.Cycling ? "opens and closes" : Words.Of(s), (byte)s))],
    };
}

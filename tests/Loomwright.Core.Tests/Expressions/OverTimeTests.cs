using System.Globalization;
using Loomwright.Expressions;

namespace Loomwright.Tests.Expressions;

public sealed class OverTimeTests
{
    private static readonly string[] Declared = ["left", "right", "key", "hazard", "lock"];

    public static TheoryData<string, string, string> Rows() =>
        [.. Pages.Table("docs/expressions.md", "Over time").Select(row => (row[0], row[1], row[2]))];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Each_form_does_over_time_what_the_page_says(string condition, string steps, string asksFor)
    {
        var reading = ExpressionText.Read(condition, Declared);
        Assert.True(reading.Expression is not null, reading.Problem);
        var box = new Box(reading.Expression);
        Assert.Equal(asksFor, string.Join(", ", steps.Split(", ").Select(box.Do)));
    }

    [Fact]
    public void A_timer_says_when_it_runs_out_and_an_equal_history_is_an_equal_memory()
    {
        var evaluator = new Evaluator([ExpressionText.Read("latching(left; until 45 s)", Declared).Expression!, ExpressionText.Read("right delayed 2 s", Declared).Expression!]);
        Memory Look(Memory memory, string held) => evaluator.Step(memory, name => name == held, _ => "").Next;

        var idle = Look(Memory.Fresh, "");
        Assert.Null(Evaluator.NextTimer(idle));
        var latched = Look(Look(idle, "left"), "right");
        Assert.Equal(TimeSpan.FromSeconds(2), Evaluator.NextTimer(latched));
        Assert.True(evaluator.Remembers(latched, 0));
        Assert.False(evaluator.Remembers(latched, 1));

        var later = Look(Evaluator.Advance(latched, TimeSpan.FromSeconds(2)), "right");
        Assert.Equal(TimeSpan.FromSeconds(43), Evaluator.NextTimer(later));
        var over = Look(Evaluator.Advance(later, TimeSpan.FromHours(1)), "");
        Assert.Equal(idle, over);
        Assert.Equal(idle.GetHashCode(), over.GetHashCode());
        Assert.NotEqual(idle, latched);
    }

    [Fact]
    public void Looking_again_at_the_same_inputs_changes_nothing()
    {
        var evaluator = new Evaluator([.. Pages.Table("docs/expressions.md", "Over time").Select(row => ExpressionText.Read(row[0], Declared).Expression!)]);
        var (_, memory) = evaluator.Step(Memory.Fresh, _ => false, _ => "off");
        foreach (var held in Declared)
        {
            memory = evaluator.Step(memory, name => name == held, _ => "off").Next;
            var (second, after) = evaluator.Step(memory, name => name == held, _ => "off");
            var (third, last) = evaluator.Step(after, name => name == held, _ => "off");
            Assert.Equal(second, third);
            Assert.Equal(after, last);
            memory = last;
        }
    }

    /// <summary>A load controller with one output and nothing else.</summary>
    private sealed class Box(Expression when)
    {
        private readonly Evaluator _evaluator = new([when]);
        private readonly HashSet<string> _held = [];
        private string _lock = "off";
        private Memory _memory = Memory.Fresh;

        public string Do(string step)
        {
            var words = step.Split(' ');
            switch (words)
            {
                case ["wake"]:
                    break;
                case ["wake", "holding", var name]:
                    _held.Add(name);
                    break;
                case ["press", var name, ..]:
                    _held.Add(name);
                    break;
                case ["release", var name]:
                    _held.Remove(name);
                    break;
                case ["turn", "lock", "to", var position]:
                    _lock = position;
                    break;
                case ["wait", var number, var unit]:
                    var seconds = double.Parse(number, CultureInfo.InvariantCulture) * (unit == "ms" ? 0.001 : 1);
                    _memory = Evaluator.Advance(_memory, TimeSpan.FromSeconds(seconds));
                    break;
                case ["sleep"]:
                    _memory = _evaluator.Forget(Look().Next);
                    return "off";
                case ["stay", "awake"]:
                    break;
                default:
                    throw new InvalidOperationException($"no such step: {step}");
            }

            var first = Look();
            var second = Look();
            return first.Level == second.Level ? Words(first.Level) : $"{(second.Level.On ? "?" : "instant")}";
        }

        private (Level Level, Memory Next) Look()
        {
            var (levels, next) = _evaluator.Step(_memory, _held.Contains, _ => _lock);
            _memory = next;
            return (levels[0], next);
        }

        private static string Words(Level level) => level switch
        {
            { On: false } => "off",
            { Blinks: true } => string.Create(CultureInfo.InvariantCulture, $"{level.Share * 100:0}/{level.ShareBetween * 100:0}"),
            { Share: 1 } => "on",
            _ => string.Create(CultureInfo.InvariantCulture, $"{level.Share * 100:0}"),
        };
    }
}

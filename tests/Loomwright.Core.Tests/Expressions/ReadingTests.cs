using CsCheck;
using Loomwright.Expressions;

namespace Loomwright.Tests.Expressions;

public sealed class ReadingTests
{
    private const string Page = "docs/expressions.md";
    private static readonly string[] Declared = ["left", "left rear", "right", "key", "stop", "hazard", "stop (rear)", "Öl-Druck"];

    public static TheoryData<string, string> ReadAs() =>
        [.. Pages.Table(Page, "Read as").Select(row => (row[0], row[1]))];

    public static TheoryData<string, int, string, string> Refused() =>
        [.. Pages.Table(Page, "What is refused").Select(row => (row[0], int.Parse(row[1], System.Globalization.CultureInfo.InvariantCulture), row[2], row[3]))];

    [Fact]
    public void The_page_declares_the_names_its_tables_use() =>
        Assert.Contains($"Names declared here: {string.Join(", ", Declared.Select(n => $"`{n}`"))}.", Pages.Read(Page), StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(ReadAs))]
    public void A_condition_means_what_the_page_says(string written, string readAs)
    {
        var expression = ExpressionText.Read(written, Declared).Expression;
        Assert.NotNull(expression);
        Assert.Equal(ExpressionText.Read(readAs, Declared).Expression, expression);
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public void A_condition_that_makes_no_sense_says_where_why_and_what_to_write(string written, int at, string problem, string cure) =>
        Assert.Equal(new ExpressionReading(null, at, problem, cure), ExpressionText.Read(written, Declared));

    [Fact]
    public void Where_positions_are_known_the_longest_is_taken_and_a_wrong_one_is_named()
    {
        string[] positions = ["park", "park and light", "riding"];
        Assert.Equal(
            new Expression.Is("lock", "park and light"),
            ExpressionText.Read("lock is PARK and light", ["lock", "light"], _ => positions).Expression);
        Assert.Equal("did you mean riding?", ExpressionText.Read("lock is ridng", ["lock"], _ => positions).Cure);
        Assert.Equal("its positions are park, park and light, riding", ExpressionText.Read("lock is sideways", ["lock"], _ => positions).Cure);
    }

    [Fact]
    public void A_name_that_contains_a_word_of_the_language_wins_over_the_word_and_one_that_is_such_a_word_does_not()
    {
        string[] names = ["left", "right", "left and right", "not"];
        Assert.Equal(new Expression.Named("left and right"), ExpressionText.Read("left and right", names).Expression);
        Assert.Equal(new Expression.Not(new Expression.Named("left")), ExpressionText.Read("not left", names).Expression);
    }

    [Fact]
    public void A_condition_tells_every_name_in_it() =>
        Assert.Equal(
            ["left", "right", "key", "stop"],
            ExpressionText.Read("latching(left or not right; until key, 2 s) and stop at 20 %", Declared).Expression!.NamesUsed());

    [Fact]
    public void Letters_written_as_letter_and_accent_are_the_same_name() =>
        Assert.Equal(new Expression.Named("Öl-Druck"), ExpressionText.Read("O\u0308l-Druck", Declared).Expression);

    [Fact]
    public void Brackets_beyond_reason_are_refused_and_not_followed()
    {
        Assert.NotNull(ExpressionText.Read(new string('(', 1500) + "left" + new string(')', 1500), Declared).Problem);
        Assert.NotNull(ExpressionText.Read(string.Concat(Enumerable.Repeat("blinking ", 400)) + "left", Declared).Problem);
        Assert.NotNull(ExpressionText.Read(string.Concat(Enumerable.Repeat("not ", 900)) + "left", Declared).Problem);
        Assert.NotNull(ExpressionText.Read(new string('x', 5000), Declared).Problem);
    }

    [Fact]
    public void No_text_makes_the_reader_throw_and_every_problem_comes_with_place_and_cure() =>
        Gen.OneOf(
                Gen.String,
                OneOf(Words).Array[0, 20].Select(words => string.Join(' ', words)),
                OneOf(Words).Array[0, 20].Select(string.Concat))
            .Sample(text =>
            {
                var reading = ExpressionText.Read(text, Declared);
                Assert.Equal(reading.Expression is null, reading.Problem is not null);
                Assert.Equal(reading.Expression is null, reading.Cure is not null);
                Assert.InRange(reading.ProblemOffset, 0, text.Length);
            });

    [Fact]
    public void What_is_written_reads_back_equal() =>
        Any(4).Sample(expression => Assert.Equal(expression, ExpressionText.Read(expression.ToString(), Declared).Expression));

    private static readonly string[] Words =
    [
        .. Declared, "and", "or", "not", "(", ")", "always", "latching(", "; until", "until", ",", "45 s", "1,5 s", "pressed(", "at press of",
        "blinking", "at most", "delayed", "at", "20 %", "is", "riding", "\ud800", "\u0308", "9999999999999", "1..2",
    ];

    private static Gen<string> OneOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static Gen<Expression> Any(int depth)
    {
        var name = OneOf(Declared);
        var time = Gen.Long[TimeSpan.TicksPerMillisecond, TimeSpan.TicksPerHour].Select(TimeSpan.FromTicks);
        var leaf = Gen.OneOf(
            name.Select(n => (Expression)new Expression.Named(n)),
            Gen.Select(name, OneOf("riding", "far right")).Select((n, p) => (Expression)new Expression.Is(n, p)),
            Gen.Const((Expression)new Expression.Always()));
        if (depth == 0)
        {
            return leaf;
        }

        var inner = Any(depth - 1);
        return Gen.OneOf(
            leaf,
            inner.Select(e => (Expression)new Expression.Not(e)),
            Gen.Select(inner, inner).Select((a, b) => (Expression)new Expression.And(a, b)),
            Gen.Select(inner, inner).Select((a, b) => (Expression)new Expression.Or(a, b)),
            Gen.Select(inner, name.Array[1, 3], Gen.OneOf(time.Select(t => (TimeSpan?)t), Gen.Const((TimeSpan?)null))).Select((e, until, after) => (Expression)new Expression.Latching(e, [.. until.Select(u => (Expression)new Expression.Named(u))], after)),
            Gen.Select(inner, time).Select((e, t) => (Expression)new Expression.Latching(e, [], t)),
            Gen.Select(inner, time).Select((e, t) => (Expression)new Expression.Pressed(e, t)),
            inner.Select(e => (Expression)new Expression.AtPress(e)),
            inner.Select(e => (Expression)new Expression.Blinking(e)),
            Gen.Select(inner, time).Select((e, t) => (Expression)new Expression.AtMost(e, t)),
            Gen.Select(inner, time).Select((e, t) => (Expression)new Expression.Delayed(e, t)),
            Gen.Select(inner, Gen.Int[1, 1000]).Select((e, s) => (Expression)new Expression.Dimmed(e, (double)(s / 1000m))));
    }

    [Fact]
    public void A_position_may_be_called_by_a_word_of_the_language() =>
        Assert.Equal(new Expression.Is("horn button", "pressed"), ExpressionText.Read("horn button is pressed", ["horn button"], _ => ["released", "pressed"]).Expression);
}

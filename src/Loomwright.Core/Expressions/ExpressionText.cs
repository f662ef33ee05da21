namespace Loomwright.Expressions;

/// <summary>What came of reading a condition: the expression, or where it stopped making sense, what is wrong there, and the cure.</summary>
/// <param name="Expression">Null when there is a problem.</param>
/// <param name="ProblemOffset">Characters from the start of the text; 0 when there is no problem.</param>
public sealed record ExpressionReading(Expression? Expression, int ProblemOffset, string? Problem, string? Cure);

/// <summary>The small language of <c>when</c>, <c>awake</c> and <c>works</c>; its grammar and a worked table stand in docs/expressions.md.</summary>
public static class ExpressionText
{
    /// <summary>Longer texts are refused.</summary>
    public const int MostCharacters = 4000;

    /// <summary>Reads a condition. Never throws.</summary>
    /// <param name="text">As the owner wrote it.</param>
    /// <param name="names">The inputs or controls it may name; where two fit, the longest is taken. The expression carries their spelling.</param>
    /// <param name="positionsOf">The positions a control has. Left out: any word up to the next word of the language is taken as a position.</param>
    public static ExpressionReading Read(string text, IReadOnlyCollection<string> names, Func<string, IReadOnlyCollection<string>>? positionsOf = null)
    {
        if (text.Length > MostCharacters)
        {
            return new(null, MostCharacters, $"the condition is longer than {MostCharacters} characters", "split it over several inputs or outputs");
        }

        var grammar = new Grammar(new Scanner(text), new Vocabulary(names), positionsOf);
        var expression = grammar.Whole();
        return grammar.Problem is { } problem ? new(null, problem.Offset, problem.What, problem.Cure) : new(expression, 0, null, null);
    }
}

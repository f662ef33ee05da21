using Loomwright.Bench;
using Loomwright.Diagnosis;

namespace Loomwright.Output;

/// <summary>A search for a cause, for a person: what may be wrong with why, what to do next, what each answer would mean.</summary>
internal static class TroubleView
{
    private const int Most = 6;

    public static void Write(Screen screen, TroubleTable table, Trouble trouble)
    {
        screen.Line(trouble.State switch
        {
            Search.Found => "Found:",
            Search.CannotTellApart => "What there is to see and to measure does not tell these apart any more; begin with the first:",
            Search.DoesNotFit => "The answers do not fit anything in the list, also after asking again. Nearest:",
            _ => "What may be wrong:",
        });
        screen.Line();
        var shown = (trouble.State == Search.CannotTellApart ? trouble.Group : trouble.Suspects).Take(Most).ToList();
        foreach (var suspect in shown)
        {
            screen.Item(FormattableString.Invariant($"{suspect.Share * 100,3:0} %"), $"{suspect.Repair}: {suspect.InWords}");
            foreach (var sentence in Why.Of(table, trouble.Answers, suspect.Hypotheses[0]))
            {
                screen.Item("     ", sentence);
            }
        }

        if (TroubleText.More(trouble, shown) is { } more)
        {
            screen.Item("   …", more);
        }

        screen.Item(FormattableString.Invariant($"{trouble.SomethingElse * 100,3:0} %"), "something that is not in the list");
        screen.Line();
        foreach (var doubt in trouble.Answers.OfType<Evidence.Seen>().Select(a => Doubt.Of(table, a)).OfType<string>())
        {
            screen.Line(doubt);
        }

        if (trouble.NotRepeated is { } not)
        {
            screen.Line(TroubleText.NotRepeated(table, not));
        }

        if (trouble.Odd is { } odd && trouble.State != Search.DoesNotFit)
        {
            screen.Line($"Ask again, it does not fit the rest: {TroubleText.Of(table, odd)}.");
        }
        else if (trouble.Surprising is { } surprising)
        {
            screen.Line(TroubleText.Contradicts(table, surprising));
        }

        if ((trouble.Odd is null || trouble.State == Search.DoesNotFit) && trouble.Questions is [var question, ..])
        {
            screen.Line(FormattableString.Invariant($"Next, about {Math.Max(0.5, question.Minutes):0.#} min: {TroubleText.Do(table, question.Place)}; {TroubleText.Ask(table, question)}"));
            if (question.Stimulus is not null && trouble.TellsBlownFuse)
            {
                screen.Line(TroubleText.StaysOut(trouble.Blown));
            }

            foreach (var outlook in trouble.Outlooks(question).Take(Most))
            {
                screen.Item("  ·", $"{outlook.Answer}: {string.Join("; or ", outlook.Repairs)}");
            }

            if (question.Place.Check is { } check)
            {
                screen.Line($"Told as: --found \"{check.Name}: …\"");
            }
        }

        if (trouble.TellsBlownFuse)
        {
            screen.Line(Cautions.BlownFuse);
        }

        screen.Line($"Before work on a wire: {trouble.Table.MinusOff}.");
    }
}

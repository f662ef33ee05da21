using System.Globalization;
using Loomwright.Cases;
using Loomwright.Diagnosis;

namespace Loomwright.Output;

/// <summary>A told case put to the search, for a person: what was told, what was asked, and where the cause stands.</summary>
internal static class CaseView
{
    public static void Write(Screen screen, CaseSearch search)
    {
        screen.Line($"{search.Account} ({search.Grade}): {string.Join(" and ", search.Cause)}.");
        foreach (var stage in search.Stages)
        {
            screen.Line();
            screen.Line("By what was told alone:");
            Suspects(screen, stage, stage.Told);
            screen.Line();
            screen.Line(string.Create(CultureInfo.InvariantCulture, $"{stage.Steps.Length} questions of its own, answered by the circuit with the cause in it, about {stage.Steps.Sum(s => s.Question.Minutes):0.#} min:"));
            foreach (var (question, answer) in stage.Steps)
            {
                var table = stage.Asked.Table;
                screen.Item("  ·", question is Question.Of ? $"{TroubleText.Of(table, answer)}" : $"{TroubleText.Ask(table, question)} {TroubleText.Of(table, answer)}");
            }

            screen.Line();
            screen.Line(stage.Asked.State switch
            {
                Search.Found => "Found:",
                Search.CannotTellApart => "Not told apart any more:",
                Search.DoesNotFit => "The answers do not fit anything in the list. Nearest:",
                _ => "What may be wrong:",
            });
            Suspects(screen, stage, stage.Asked);
        }

        screen.Line();
        screen.Line($"The cause: {Place(search.ToldRank)} by what was told alone, {Place(search.AskedRank)} after the questions. The account's repair: {string.Join("; ", search.Accept)}.");
    }

    private static void Suspects(Screen screen, CaseStage stage, Trouble trouble)
    {
        var shown = Math.Max(CaseSearch.Few, (trouble == stage.Told ? stage.ToldRank : stage.AskedRank) ?? 0);
        foreach (var (suspect, place) in trouble.Suspects.Take(shown).Select((s, i) => (s, i + 1)))
        {
            var mark = suspect.Hypotheses[0].Repairs.Any(r => stage.Accepted.Contains(r, StringComparer.Ordinal)) ? " (the cause)" : "";
            screen.Item(string.Create(CultureInfo.InvariantCulture, $"{place,3}"), string.Create(CultureInfo.InvariantCulture, $"{suspect.Repair}, {suspect.Share * 100:0} %{mark}"));
        }
    }

    private static string Place(int? rank) => rank is { } place ? string.Create(CultureInfo.InvariantCulture, $"number {place}") : "not listed";
}

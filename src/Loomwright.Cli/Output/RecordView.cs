using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Sessions;
using Loomwright.Simulation;

namespace Loomwright.Output;

/// <summary>What was checked, for a person: the same as the page of the record.</summary>
internal static class RecordView
{
    public static void Write(Screen screen, ImmutableArray<TestRecord> records, ImmutableArray<SearchRecord> searches, string? now)
    {
        if (records.IsEmpty && searches.IsEmpty)
        {
            screen.Line("Nothing was checked yet.");
            return;
        }

        foreach (var record in records)
        {
            Write(screen, record, now);
        }

        foreach (var search in searches)
        {
            screen.Line($"Search for a cause{(search.Step is { } step ? $" from step {step}" : "")}, begun {TestRecord.When(search.Search.Began)}. File: {search.Search.Design[..12]}{(search.Search.Design == now ? "" : ", changed since")}.");
            foreach (var told in search.Answers)
            {
                screen.Item($"· {told.At.ToString("HH:mm", CultureInfo.InvariantCulture)}", SearchRecord.Says(told));
            }
        }

        screen.Line("What was expected is computed from the file as it stood; what was read and seen is what the person said. Nothing here says that the bike may be ridden.");
    }

    private static void Write(Screen screen, TestRecord record, string? now)
    {
        var session = record.Session;
        screen.Line($"{TestRecord.Where(session)}, begun {TestRecord.When(session.Began)}. Who: {TestRecord.Said(session.Who)}. Meter: {TestRecord.Said(session.Meter)}. File: {session.Design[..12]}{(session.Design == now ? "" : ", changed since")}. Plan: {TestRecord.Named(session)}.");
        if (session.Fault is { } fault)
        {
            screen.Line($"Fault put in on purpose: {fault}.");
        }

        var table = Columns.Under("step", "what", "expected", "answer", "when");
        foreach (var (line, before) in record.Lines.Zip(record.Lines.Prepend(null)))
        {
            // The same for all of a step.
            table.Row(line.Step.Id, line.Step == before?.Step ? What(line) : $"{What(line)} ({line.With})", line.Expected.Shows, line.Words, line.Answer.At.ToString("HH:mm", CultureInfo.InvariantCulture));
        }

        screen.Show(table, record.Void.IsEmpty ? "Nothing of the plan was answered." : "Nothing of the plan that was answered counts any more.");
        if (!record.ReadAlone.IsEmpty)
        {
            screen.Line("Read, but the step was not answered:");
            foreach (var line in record.ReadAlone)
            {
                screen.Item($"· {line.Step.Id}", $"{What(line)} ({line.With}): {line.Words}, expected {line.Expected.Shows}");
            }
        }

        if (!record.Void.IsEmpty)
        {
            screen.Line("Read before, and no longer counting:");
            foreach (var line in record.Void)
            {
                screen.Item($"· {line.Step.Id}", $"{What(line)} ({line.With}): {line.Words} (void since {record.Says(line.VoidSince!)})");
            }
        }

        foreach (var happened in record.Happened)
        {
            screen.Item($"· {TestRecord.When(happened.At)}", $"{record.Says(happened)}, at step {happened.Step}");
        }

        screen.Line(record.NotChecked.IsEmpty ? "Nothing of the plan was left out." : "Not checked:");
        foreach (var step in record.NotChecked)
        {
            screen.Item($"· {step.Id}", step.Text);
        }
    }

    private static string What(TestLine line) => line.Expected.Band is null ? Words.Name(line.Expected.What) : line.Expected.What;
}

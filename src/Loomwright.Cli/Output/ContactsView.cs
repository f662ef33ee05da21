using System.Collections.Immutable;
using Loomwright.Contacts;

namespace Loomwright.Output;

/// <summary>An unmarked switch or lamp for a person: what is read, what to touch next, what to beware of.</summary>
internal static class ContactsView
{
    public static void Write(Screen screen, UnmarkedSwitch read)
    {
        var table = Columns.Under(["between", .. read.Positions]);
        for (var one = 0; one < read.Leads.Length; one++)
        {
            for (var other = one + 1; other < read.Leads.Length; other++)
            {
                var (a, b) = (one, other);
                table.Row([$"{read.Leads[a]} and {read.Leads[b]}", .. read.Positions.Select((_, p) => read.Measured(p, a, b) switch { true => "joined", false => "open", _ => "?" })]);
            }
        }

        screen.Show(table);
        screen.Line(read.Summary);
        if (read.Next is { } next)
        {
            screen.Line($"Next: switch to {read.Positions[next.Position]}, {(next.Stays ? "leave the meter" : "meter")} on {read.Leads[next.One]} and {read.Leads[next.Other]}.{(next.Again ? " It was read before and does not fit the others." : "")}");
        }

        foreach (var warning in read.Warnings)
        {
            screen.Item("▲", warning);
        }

        screen.Line("Power off, the switch unplugged. The meter tells which leads are joined, never which is feed or ground.");
    }

    public static void Write(Screen screen, LampLeads read, ImmutableArray<string> leads)
    {
        foreach (var words in read.Words)
        {
            screen.Item("·", words);
        }

        if (read.Next is { } next)
        {
            screen.Line(next.Feed
                ? $"Next: 12 V through 1 kΩ, plus on {leads[next.Plus]}, minus on {leads[next.Minus]}. Does it light?"
                : $"Next: ohms between {leads[next.Plus]} and {leads[next.Minus]}; touch the probes together first and take that off.");
        }
    }
}

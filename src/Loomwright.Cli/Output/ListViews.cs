using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Loomwright.Answers;
using Loomwright.Parts;
using Loomwright.Verbs;

namespace Loomwright.Output;

/// <summary>Lists for a person.</summary>
internal static class ListViews
{
    public static void Parts(Screen screen, OpenedDesign design)
    {
        var table = Columns.Under("part", "kind", "place", "terminals");
        foreach (var part in design.Bike.Loom!.Parts)
        {
            var terminals = Bike.Model(part).Terminals.Where(t => t.Mark.Length > 0).Select(t => t.Name is null ? t.Mark : $"{t.Mark} ({t.Name})");
            table.Row(part.Name, part.Kind, part.Place ?? "", string.Join(", ", terminals));
        }

        screen.Show(table, "No part of this design could be read.");
    }

    public static void Controls(Screen screen, OpenedDesign design)
    {
        var table = Columns.Under("control", "positions", "at rest", "let go");
        foreach (var control in design.Bike.Controls)
        {
            table.Row(control.Name, string.Join(", ", control.Positions), control.Rest, control.Momentary ? "springs back" : "stays");
        }

        screen.Show(table, "There is nothing to operate in this design.");
        screen.Line("Operate one: loomwright try FILE --set \"CONTROL=POSITION\"");
    }

    public static void Faults(Screen screen, OpenedDesign design)
    {
        var faults = design.Bike.ListFaults();
        foreach (var kind in faults.Select(f => FaultAnswer.Of(f)).GroupBy(f => f.Kind))
        {
            screen.Line(string.Create(CultureInfo.InvariantCulture, $"{Meaning(kind.Key)}: {kind.Count()}"));
            foreach (var fault in kind)
            {
                screen.Line(string.Create(CultureInfo.InvariantCulture, $"  {fault.Prior,7:P2}  {fault.Id}"));
            }

            screen.Line();
        }

        screen.Line("Put one in: loomwright try FILE --fault \"ID\"");
    }

    public static void Kinds(Screen screen)
    {
        var table = Columns.Under("kind", "what it is", "it asks for");
        foreach (var kind in Loomwright.Parts.Kinds.All)
        {
            table.Row(kind.Name, kind.Meaning, string.Join(", ", kind.Parameters.Where(p => p.Required).Select(p => p.Key)));
        }

        screen.Show(table);
        screen.Line("All that one takes: loomwright list kinds KIND");
    }

    public static void Kind(Screen screen, Kind kind)
    {
        screen.Line($"{kind.Name}: {kind.Meaning}");
        var table = Columns.Under("key", "needed", "what stands there", "meaning");
        AddKeys(table, "", kind.Parameters);
        screen.Show(table);
    }

    private static void AddKeys(Spectre.Console.Table table, string above, ImmutableArray<Parameter> parameters)
    {
        foreach (var parameter in parameters)
        {
            table.Row(above + parameter.Key, parameter.Required ? "yes" : "", Words(parameter.Form), parameter.Meaning);
            if (Below(parameter.Form) is { } keys)
            {
                AddKeys(table, above + parameter.Key + "/", keys);
            }
        }
    }

    private static ImmutableArray<Parameter>? Below(Form form) => form switch
    {
        Form.Keys k => k.Parameters,
        Form.Each e => Below(e.Entry),
        _ => null,
    };

    private static string Words(Form form) => form switch
    {
        Form.Quantity q => Quantity(q),
        Form.Choice c => string.Join(", ", c.Options),
        Form.Text => "text",
        Form.Condition => "a condition",
        Form.Names => "a list of names",
        Form.Pairs => "pairs of names",
        Form.Each e => $"your own names, each: {Words(e.Entry)}",
        Form.Keys => "the keys below",
        _ => throw new UnreachableException(),
    };

    private static string Quantity(Form.Quantity q)
    {
        var unit = Sign(q.Unit);
        var least = double.IsFinite(q.Least) ? q.Least.ToString(CultureInfo.InvariantCulture) : null;
        var most = double.IsFinite(q.Most) ? q.Most.ToString(CultureInfo.InvariantCulture) : null;
        return (least, most) switch
        {
            (null, null) => unit,
            (_, null) => $"{unit}, from {least}",
            (null, _) => $"{unit}, up to {most}",
            _ => $"{unit}, {least} to {most}",
        };
    }

    private static string Sign(Quantities.Unit unit) => unit switch
    {
        Quantities.Unit.Volt => "V",
        Quantities.Unit.Amp => "A",
        Quantities.Unit.Ohm => "ohm",
        Quantities.Unit.Watt => "W",
        Quantities.Unit.Metre => "m",
        Quantities.Unit.SquareMillimetre => "mm2",
        Quantities.Unit.Celsius => "C",
        Quantities.Unit.Second => "s",
        Quantities.Unit.AmpHour => "Ah",
        Quantities.Unit.Share => "share 0 to 1, or %",
        Quantities.Unit.One => "a number",
    };

    private static string Meaning(string kind) => kind switch
    {
        "open" => "A wire left out, broken or not seated",
        "moved" => "A wire end on a neighbouring terminal",
        "swapped" => "Two terminals' wires exchanged",
        "lost" => "A ground's own lead off",
        "short" => "Two terminals that touch",
        "dead" => "A part that conducts no more",
        "reversed" => "A part with plus and minus exchanged",
        "high" => "A bad joint",
        "stuck" => "A switch or relay that no longer moves",
        "leak" => "Open contacts that conduct",
        "setting" => "Something set or chosen otherwise than designed",
        _ => kind,
    };
}

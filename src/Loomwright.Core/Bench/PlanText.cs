using System.Text;
using Loomwright.Parts;

namespace Loomwright.Bench;

/// <summary>The plan as plain text, one line an act, for a terminal or paper. Same plan, same bytes; lines end in <c>\n</c>.</summary>
public static class PlanText
{
    /// <summary>The whole plan.</summary>
    public static string Of(Plan plan)
    {
        var text = new StringBuilder();
        Line(text, plan.Title);
        Line(text, "Every expected number is computed from the file. Your bike was not measured.");
        Line(text, "This helps to decide; local codes and licensed practice come first.");
        if (plan.Stages is [.., var last] && Notation.Of(last.Connected) is { } notation)
        {
            Line(text, notation);
        }

        if (!plan.PutRightFirst.IsEmpty)
        {
            Line(text, "");
            Line(text, "Before any power, put right");
            foreach (var finding in plan.PutRightFirst)
            {
                Line(text, $"  - {finding.What} {finding.Do}");
            }
        }

        foreach (var stage in plan.Stages)
        {
            Line(text, "");
            text.Append(Of(stage));
        }

        if (!plan.OpenPoints.IsEmpty)
        {
            Line(text, "");
            Line(text, "Not shown by this plan");
            foreach (var point in plan.OpenPoints)
            {
                Line(text, "  - " + point);
            }
        }

        return text.ToString();
    }

    /// <summary>One stage.</summary>
    public static string Of(Stage stage)
    {
        var text = new StringBuilder();
        Line(text, Invariant($"Stage {stage.Number}: {stage.Title}"));
        Line(text, $"  Why: {stage.Why}");
        Line(text, $"  {(stage.DrawsAtMost.Amps == 0 ? "Draws nothing" : $"Draws at most {stage.DrawsAtMost}")}, computed. {Fuse(stage.FirstFuse)}.");
        Line(text, Invariant($"  About {Effort.Minutes(stage)} min. Beside parts and wires: {string.Join(", ", Effort.Tools(stage))}."));
        Act? heading = null;
        foreach (var step in stage.Steps)
        {
            if (step.Act != heading)
            {
                heading = step.Act;
                Line(text, "  " + Heading(step.Act));
            }

            Append(text, step);
        }

        return text.ToString();
    }

    /// <summary>An act as the heading over its steps.</summary>
    public static string Heading(Act act) => act switch
    {
        Act.Fetch => "Fetch",
        Act.TakeOut => "Take out",
        Act.Connect => "Connect, power off",
        Act.Measure => "Measure before power",
        Act.PowerUp => "Power up",
        Act.Operate => "Operate",
        Act.PowerDown => "Power down",
        Act.Again => "Once more from the stage before",
        _ => throw new InvalidOperationException("an act of no known form"),
    };

    /// <summary>The letter on the dial.</summary>
    public static string Sign(Dial dial) => dial switch
    {
        Dial.Volts => "V",
        Dial.Ohms => "Ω",
        Dial.Amps => "A",
        _ => throw new InvalidOperationException("a dial position of no known form"),
    };

    /// <summary>A dial position in words, with the sign on the meter.</summary>
    public static string Words(Dial dial) => dial switch
    {
        Dial.Volts => "V with a line and dashes",
        Dial.Ohms => "Ω",
        Dial.Amps => "A",
        _ => throw new InvalidOperationException("a dial position of no known form"),
    };

    private static void Append(StringBuilder text, Step step)
    {
        Line(text, $"    {step.Id}  {step.Text}");
        const string inset = "        ";
        foreach (var caution in step.Cautions)
        {
            Line(text, $"{inset}Caution: {caution}");
        }

        if (step.Meter is { } meter)
        {
            Line(text, $"{inset}Meter: {Words(meter.Dial)}. Black plug {meter.BlackSocket}, red plug {meter.RedSocket}. {meter.First}");
            Line(text, $"{inset}Red tip on {meter.RedTip}, black tip on {meter.BlackTip}. Power {(meter.PowerOn ? "on" : "off")}.");
        }

        foreach (var expected in step.Expect)
        {
            Line(text, $"{inset}Expect: {Spoken.Of(expected.What)}: {expected.Shows}{(expected.Band is null ? "" : ", computed")}");
        }
    }

    /// <summary>The fuse of a stage, in words.</summary>
    public static string Fuse(FirstFuse fuse) => $"{FuseName(fuse)}: {FuseIs(fuse)}";

    /// <summary>What the fuse of a stage is called: one for first power, or the one that stays.</summary>
    public static string FuseName(FirstFuse fuse) => fuse.Stays ? "Fuse" : "Fuse for first power";

    /// <summary>Its rating and body, and how it stands to the one that stays.</summary>
    public static string FuseIs(FirstFuse fuse)
    {
        var final = fuse.Stays ? ", the one that stays" : fuse.Final is { } f ? $"; the one that stays is {f.Printed}" : "";
        return $"{fuse.Rating.Printed}{(fuse.BodyColour.Length == 0 ? "" : $", {fuse.BodyColour} body")}{final}";
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}

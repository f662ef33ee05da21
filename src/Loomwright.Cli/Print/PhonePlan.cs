using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Drawing;
using Loomwright.Faults;
using Loomwright.Parts;
using Loomwright.Proof;

namespace Loomwright.Print;

/// <summary>A whole plan as one HTML file for a phone: no server, nothing fetched, ticks kept by the phone.</summary>
internal static partial class PhonePlan
{
    /// <summary>The page. Same plan, same bytes.</summary>
    /// <param name="proven">The plan.</param>
    /// <param name="loom">The design it is of.</param>
    /// <param name="file">The design file it was made from.</param>
    /// <param name="sha256">Its hash: ticks belong to this and no other design.</param>
    public static string Of(Proven proven, Loom loom, string file, string sha256)
    {
        var plan = proven.Plan;
        var html = new StringBuilder();
        html.Append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Append(CultureInfo.InvariantCulture, $"<title>{Text(plan.Title)}</title>\n<style>\n{PhoneLook.Css}</style>\n</head>\n<body data-plan=\"{Text($"{sha256} {plan.Title}")}\">\n");
        html.Append(CultureInfo.InvariantCulture, $"<header>\n<h1>{Text(plan.Title)}</h1>\n<p class=\"quiet\">From {Text(file)}, {Text(sha256[..Math.Min(12, sha256.Length)])}. Every expected number is computed; your bike was not measured. Local codes and licensed practice come first. {Text(Notation.Of(loom) ?? "")}</p>\n");
        Colours(html, plan);
        html.Append(Pictures).Append("</header>\n<main>\n");
        foreach (var finding in plan.PutRightFirst)
        {
            html.Append(CultureInfo.InvariantCulture, $"<p class=\"caution\"><b>Put right before any power.</b> {Text(finding.What)} {Text(finding.Do)}</p>\n");
        }

        foreach (var stage in plan.Stages)
        {
            Stage(html, stage);
        }

        Rest(html, proven);
        html.Append("</main>\n<script>\n").Append(PhoneLook.Script).Append("</script>\n</body>\n</html>\n");
        return html.ToString();
    }

    private static void Stage(StringBuilder html, Stage stage)
    {
        var fuse = stage.FirstFuse.Rating.Amps > 0 ? $"{PlanText.Fuse(stage.FirstFuse)}. " : "";
        html.Append(CultureInfo.InvariantCulture, $"<details class=\"stage\" id=\"s{stage.Number}\"{(stage.Number == 0 ? " open" : "")}>\n<summary><span>Stage {stage.Number}: {Text(stage.Title)}</span> <span class=\"done\" aria-live=\"polite\"></span></summary>\n");
        html.Append(CultureInfo.InvariantCulture, $"<p>{Text(stage.Why)}</p>\n<p class=\"quiet\">{Text(fuse)}Draws {(stage.DrawsAtMost.Amps == 0 ? "nothing" : $"at most {stage.DrawsAtMost}")}. About {Effort.Minutes(stage)} min. Beside parts and wires: {Text(string.Join(", ", Effort.Tools(stage)))}.</p>\n");
        Act? act = null;
        var on = false;
        foreach (var step in stage.Steps)
        {
            if (step.Act != act)
            {
                html.Append(act is null ? "" : "</ol>\n").Append(CultureInfo.InvariantCulture, $"<h3>{Text(PlanText.Heading(step.Act))}</h3>\n<ol>\n");
                act = step.Act;
            }

            Step(html, step, step.PowerOn == on ? null : step.PowerOn);
            on = step.PowerOn;
        }

        html.Append(act is null ? "" : "</ol>\n");
        Hot(html, stage);
        html.Append("</details>\n");
    }

    // Last in its stage, so that it stays at the foot of the screen while the stage is open.
    private static void Hot(StringBuilder html, Stage stage)
    {
        var order = WayOff.Of(stage);
        if (!order.IsEmpty)
        {
            html.Append(CultureInfo.InvariantCulture, $"<details class=\"hot\"><summary>Hot, smoke or smell</summary>{string.Concat(order.Insert(0, "Hands off the wire.").Add(Cautions.HotBattery(stage.Connected)).Where(o => o.Length > 0).Select(o => $"<p>{Text(o)}</p>"))}</details>\n");
        }
    }

    private static void Step(StringBuilder html, Step step, bool? power)
    {
        html.Append("<li>\n");
        if (power is { } on)
        {
            html.Append(CultureInfo.InvariantCulture, $"<p class=\"power{(on ? " on" : "")}\">&#9889; Power is {(on ? "on" : "off")} from here</p>\n");
        }

        foreach (var caution in step.Cautions)
        {
            html.Append(CultureInfo.InvariantCulture, $"<p class=\"caution\"><b>Caution.</b> {Text(caution)}</p>\n");
        }

        html.Append(CultureInfo.InvariantCulture, $"<label><input type=\"checkbox\" id=\"{Text(step.Id)}\"><span>{Text(step.Text)}</span></label>\n");
        if (step.Meter is { } meter)
        {
            html.Append(CultureInfo.InvariantCulture, $"<p class=\"meter\"><svg viewBox=\"{MeterPicture.ViewBox}\" role=\"img\" aria-label=\"{Text(MeterPicture.Words(PlanText.Sign(meter.Dial), meter.RedSocket, meter.BlackSocket))}\"><use href=\"#meter-{meter.Dial}\"/></svg><span>{Text(PlanText.Words(meter.Dial))}, power {(meter.PowerOn ? "on" : "off")}. Red: socket {Text(meter.RedSocket)}, tip on <b>{Text(meter.RedTip.ToString())}</b>. Black: socket {Text(meter.BlackSocket)}, tip on <b>{Text(meter.BlackTip.ToString())}</b>. {Text(meter.First)}</span></p>\n");
        }

        if (!step.Expect.IsEmpty)
        {
            html.Append("<dl>\n");
            foreach (var expected in step.Expect)
            {
                html.Append(CultureInfo.InvariantCulture, $"<div><dt>{Text(expected.What.Replace('.', ' '))}</dt><dd>{Text(expected.Shows)}</dd></div>\n");
            }

            html.Append("</dl>\n");
        }

        html.Append("</li>\n");
    }

    private static void Rest(StringBuilder html, Proven proven)
    {
        if (!proven.Coverage.Faults.IsEmpty)
        {
            Catches(html, proven);
        }

        if (!proven.Plan.OpenPoints.IsEmpty)
        {
            html.Append("<details class=\"stage\"><summary>Not shown by this plan</summary>\n<ul>\n");
            foreach (var point in proven.Plan.OpenPoints)
            {
                html.Append(CultureInfo.InvariantCulture, $"<li>{Text(point)}</li>\n");
            }

            html.Append("</ul></details>\n");
        }
    }

    // Said once for each dial, shown at every step.
    private static readonly string Pictures = "<svg width=\"0\" height=\"0\" style=\"position:absolute\" aria-hidden=\"true\">"
        + string.Concat(Enum.GetValues<Dial>().Select(d => $"<symbol id=\"meter-{d}\" viewBox=\"{MeterPicture.ViewBox}\">{MeterPicture.Inside(PlanText.Sign(d), d == Dial.Amps ? "10 A" : "V Ω", "COM")}</symbol>")) + "</svg>\n";

    private static void Colours(StringBuilder html, Plan plan)
    {
        var used = plan.Stages.SelectMany(s => s.Connected.Wires).Select(w => w.Colour).OfType<WireColour>().DistinctBy(c => c.ToString()).OrderBy(c => c.ToString(), StringComparer.Ordinal).Select(c => $"{c} {WireColours.InWords(c)}").ToList();
        if (used.Count > 0)
        {
            html.Append(CultureInfo.InvariantCulture, $"<details><summary>Wire colours</summary><p>{Text(string.Join("; ", used))}.</p></details>\n");
        }
    }

    private static void Catches(StringBuilder html, Proven proven)
    {
        var (harm, coverage) = (proven.Harm, proven.Coverage);
        html.Append(CultureInfo.InvariantCulture, $"<details class=\"stage\"><summary>What this plan catches</summary>\n<p>Each single mistake was put in, computed. {harm.Faults.Length} could harm: {harm.Count(Fate.Caught)} are caught before power, {harm.Count(Fate.Limited)} show on the small fuse before they harm, {harm.Count(Fate.Open)} stay open.</p>\n");
        Listed(html, proven, "Stays open: mind the caution at its step", harm.Faults.Where(f => f.Fate == Fate.Open).Select(f => f.Fault));
        html.Append(CultureInfo.InvariantCulture, $"<p>The plan sees {coverage.Seen * 100:0.0} % of {coverage.Faults.Length} single mistakes; operating everything and looking would see {coverage.SeenByLooking * 100:0.0} %.</p>\n");
        foreach (var seen in Enum.GetValues<SeenBy>())
        {
            var faults = coverage.Faults.Where(f => f.SeenBy == seen).Select(f => f.Fault).ToList();
            if (seen == SeenBy.Two)
            {
                html.Append(CultureInfo.InvariantCulture, $"<p>{Text(ProofText.Words(seen))}: {faults.Count}</p>\n");
                continue;
            }

            Listed(html, proven, ProofText.Words(seen), faults);
        }

        foreach (var stage in proven.Plan.Stages)
        {
            Listed(html, proven, string.Create(CultureInfo.InvariantCulture, $"without stage {stage.Number} ({stage.Title}) and its repeat in the next, no longer seen"), coverage.LostWithout(stage.Number));
        }

        html.Append("</details>\n");
    }

    private static void Listed(StringBuilder html, Proven proven, string title, IEnumerable<Fault> faults)
    {
        var told = proven.Told(faults);
        if (!told.IsEmpty)
        {
            html.Append(CultureInfo.InvariantCulture, $"<details><summary>{Text(title)}: {told.Length}</summary>\n<ul>{string.Concat(told.Select(t => $"<li>{Text(t)}</li>"))}</ul></details>\n");
        }
    }

    // A sign of a pole stays on the line of what it belongs to.
    private static string Text(string text) => WebUtility.HtmlEncode(Pole().Replace(text, "\u00a0"));

    [GeneratedRegex(@" (?=[+-](?:$|[ .,:;)”]))", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Pole();
}

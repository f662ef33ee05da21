using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;

namespace Loomwright.Checks;

/// <summary>Parts that ground through the metal they are screwed into, where nothing joins that metal to battery minus.</summary>
internal static class SensorOnInsulatedEngine
{
    public static Rule Rule { get; } = new(
        "sensor-on-insulated-engine",
        Severity.Look,
        Severity.Look,
        "A part that grounds through its mount, on metal that is not joined to ground.",
        Look);

    private static ImmutableArray<Finding> Look(Study study)
    {
        var paths = study.Paths;
        var returned = paths.Source is null ? [] : paths.Joined(paths.Return, t => t.Carries);
        return
        [
            .. from body in study.Loom.Parts
               where paths.Source is not null && body.Kind == "ground body" && !returned.Contains(new TerminalRef(body.Name, ""))
               let mounted = Mounted(paths, body.Name)
               where mounted.Count > 0
               select new Finding(
                   Rule.Code,
                   Severity.Look,
                   new Subject.OfPart(body.Name),
                   "The ground of {mounted} is {body}, and nothing joins {body} to {return}.",
                   "A switch or sensor of that kind has its ground through the thread it is screwed into. On an engine in rubber, or a painted bracket, that ground is not there, and the part looks dead.",
                   "Draw a strap from {body} to the ground bar or to {return}. If {body} sits on the frame with bare metal, say what it is joined to.",
                   [
                       Evidence.Of("mounted", string.Join(", ", mounted)),
                       Evidence.Of("body", body.Name),
                       Evidence.Of("return", Called.At(paths, paths.Return)),
                   ]),
        ];
    }

    /// <summary>Wired parts whose metal sits on that body.</summary>
    public static List<string> Mounted(Paths paths, string body) =>
    [
        .. paths.Built.Where(p => p.Part.Kind != "ground body" && paths.IsWired(p.Part) && p.Model.Joints.Any(j => Text.Names.Same(j.Part, body))).Select(p => p.Part.Name),
    ];
}

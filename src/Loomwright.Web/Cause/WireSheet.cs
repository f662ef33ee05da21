using System.Runtime.CompilerServices;
using Loomwright.Bench;
using Loomwright.Design;
using Loomwright.Drawing;
using Loomwright.Records;
using Loomwright.Sessions;
using Loomwright.Web.Bikes;
using Loomwright.Web.Shell;
using Microsoft.AspNetCore.Http;

namespace Loomwright.Web.Cause;

/// <summary>The picture of one wire: strong among what is connected, from where it comes to where it goes.</summary>
internal static class WireSheet
{
    public const string Route = "/wire-sheet/{*path}";

    // Of a small loom the search finds the same much earlier; a whole bike's takes seconds with more.
    private const int Trials = 1500;

    private static readonly ConditionalWeakTable<Loom, Dictionary<string, Scene?>> Known = [];

    /// <summary>Where it is; of a session's stage only what is connected there is drawn.</summary>
    public static string Address(string path, string wire, Handover? handed, bool dim) =>
        $"{Links.To("wire-sheet", path)}?wire={Uri.EscapeDataString(wire)}{(handed is null ? "" : $"&session={handed.Session}&step={Uri.EscapeDataString(handed.Step.Id)}")}{(dim ? "&dim=true" : "")}";

    /// <summary>The drawing, or "not found".</summary>
    public static IResult Answer(Garage garage, Guide guide, string path, string? wire, string? session, string? step, bool? dim)
    {
        var loom = session is null ? garage.Find(path)?.Loom : Stage(guide, session, step)?.Connected;
        return loom is null || wire is null || Scene(loom, wire) is not { } scene
            ? Results.NotFound()
            : Results.Text(Svg.Write(scene, dim == true, scene.Around()), "image/svg+xml");
    }

    private static Stage? Stage(Guide guide, string session, string? step)
    {
        try
        {
            return guide.Find(session) is { } found ? guide.Plan(found).Stages.FirstOrDefault(s => s.Steps.Any(x => x.Id == step)) : null;
        }
        catch (RecordsException)
        {
            return null;
        }
    }

    private static Scene? Scene(Loom loom, string wire)
    {
        var scenes = Known.GetOrCreateValue(loom);
        lock (scenes)
        {
            return scenes.TryGetValue(wire, out var known) ? known : scenes[wire] = Sheets.One(loom, SheetKind.Wire, wire, Trials);
        }
    }
}

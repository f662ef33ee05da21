using System.Globalization;

namespace Loomwright.Web.Shell;

/// <summary>Addresses of pages.</summary>
internal static class Links
{
    /// <summary>The page of one step of one design: <c>/try/kittiwake-bench/kittiwake-bench.loom.yaml</c>.</summary>
    public static string To(string step, string path) => $"/{step}/{string.Join('/', path.Split('/').Select(Uri.EscapeDataString))}";

    /// <summary>One session of a design, by its id, at a stage or where it stands.</summary>
    public static string Session(string path, string id, int? stage = null) => $"{To("session", path)}?session={id}{At(stage)}";

    /// <summary>The newest session of a design along one plan; the form to begin one where there is none.</summary>
    public static string Newest(string path, string plan, int? stage = null) => $"{To("session", path)}?on={plan}{At(stage)}";

    private static string At(int? stage) => stage is { } number ? string.Create(CultureInfo.InvariantCulture, $"&stage={number}") : "";
}

using System.Globalization;

namespace Loomwright.Web.Shell;

/// <summary>Addresses of pages.</summary>
internal static class Links
{
    /// <summary>The page of one step of one design: <c>/try/kittiwake-bench/kittiwake-bench.loom.yaml</c>.</summary>
    public static string To(string step, string path) => $"/{step}/{string.Join('/', path.Split('/').Select(Uri.EscapeDataString))}";

    /// <summary>The newest session of a design along one plan, at a stage or where it stands; the form to begin one where there is none.</summary>
    public static string Session(string path, string plan, int? stage = null) =>
        $"{To("session", path)}?on={plan}{(stage is { } number ? string.Create(CultureInfo.InvariantCulture, $"&stage={number}") : "")}";
}

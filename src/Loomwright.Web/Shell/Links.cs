namespace Loomwright.Web.Shell;

/// <summary>Addresses of pages.</summary>
internal static class Links
{
    /// <summary>The page of one step of one design: <c>/try/kittiwake-bench/kittiwake-bench.loom.yaml</c>.</summary>
    public static string To(string step, string path) => $"/{step}/{string.Join('/', path.Split('/').Select(Uri.EscapeDataString))}";
}

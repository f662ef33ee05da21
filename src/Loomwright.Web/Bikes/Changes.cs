using Loomwright.Web.Shell;
using Microsoft.AspNetCore.Http;

namespace Loomwright.Web.Bikes;

/// <summary>Tells a page without a live link whether the file it was made from has changed.</summary>
internal static class Changes
{
    public const string Route = "/changes/{*path}";

    /// <summary>Where a page made now asks.</summary>
    public static string Address(Garage garage, string path) => $"{Links.To("changes", path)}?since={Now(garage, path)}";

    /// <summary>205 "load again" when the file is not what it was, else 204.</summary>
    public static IResult Answer(Garage garage, string path, string? since) =>
        Results.StatusCode(Now(garage, path) == (since ?? "") ? StatusCodes.Status204NoContent : StatusCodes.Status205ResetContent);

    private static string Now(Garage garage, string path) => garage.Live(path)?.Current.Sha256 ?? "";
}

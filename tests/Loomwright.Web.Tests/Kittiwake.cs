using Loomwright.Text;
using Loomwright.Web.Try;

namespace Loomwright.Web.Tests;

/// <summary>The example on the bench, through the real engine.</summary>
internal static class Kittiwake
{
    private const string File = "examples/kittiwake-bench/kittiwake-bench.loom.yaml";

    public static Bike Bike { get; } = Bike.Read(new SourceText(File, System.IO.File.ReadAllText(Path.Combine(AppContext.BaseDirectory, File))));

    public static Session Session() => Try.Session.Start(Bike)!;

    /// <summary>Puts in the first mistake all of these words are found in.</summary>
    public static Mistake Mistake(this Session session, string words) => session.Catalogue.First(m => m.Matches(words));
}

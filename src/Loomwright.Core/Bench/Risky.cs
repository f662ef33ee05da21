using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>Parts that can hurt someone or spoil something when they run unasked, by their kinds.</summary>
internal static class Risky
{
    public static bool IsStarter(Part part) => Is(part, "starter");

    public static bool IsPump(Part part) => Is(part, "fuel pump");

    public static bool IsCoil(Part part) => Is(part, "ignition coil");

    /// <summary>What sparks or injects: without it the engine stops.</summary>
    public static bool RunsEngine(Part part) => IsCoil(part) || Is(part, "injection unit");

    /// <summary>What to mind while it runs; empty for all else.</summary>
    public static ImmutableArray<string> Cautions(Part part) =>
        IsStarter(part) ? [Bench.Cautions.Starter]
        : IsPump(part) ? [Bench.Cautions.Pump]
        : IsCoil(part) ? [Bench.Cautions.Coil]
        : [];

    private static bool Is(Part part, string kind) => Names.Same(part.Kind, kind);
}

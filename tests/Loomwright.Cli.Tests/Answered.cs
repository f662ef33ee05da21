using System.Text.Json;

namespace Loomwright.Tests;

/// <summary>An answer for a machine, as a machine reads it.</summary>
public static class Answered
{
    public static JsonElement Read(Called called)
    {
        using var document = JsonDocument.Parse(called.Out);
        return document.RootElement.Clone();
    }
}

namespace Loomwright.Parts;

/// <summary>The engine as a control: whatever depends on it names the same one, so all of it moves together.</summary>
internal static class Engine
{
    public const string Stopped = "stopped";
    public const string Idle = "idle";
    public const string Riding = "riding";

    public static Control Control { get; } = new("engine", [Stopped, Idle, Riding], Stopped, Momentary: false);
}

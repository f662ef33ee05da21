namespace Loomwright.Simulation;

/// <summary>What is seen, in the words every screen, sheet and command uses.</summary>
public static class Words
{
    /// <summary>Of a lamp, a horn, a motor, a load: what a person would say it does.</summary>
    public static string Of(Symbol symbol) => symbol switch
    {
        Symbol.Dark => "dark",
        Symbol.Dim => "dim",
        Symbol.Lit => "lit",
        Symbol.Flashing => "flashes",
        Symbol.Silent => "silent",
        Symbol.Sounds => "sounds",
        Symbol.FlashingFast => "flashes fast",
        Symbol.FlashingSlowly => "flashes slowly",
        Symbol.Turns => "turns",
        Symbol.Works => "works",
        Symbol.Rests => "rests",
    };

    /// <summary>As design and case files write it: <c>dim</c>, <c>flashing fast</c>.</summary>
    public static string Written(Symbol symbol) => symbol switch
    {
        Symbol.FlashingFast => "flashing fast",
        Symbol.FlashingSlowly => "flashing slowly",
        _ => symbol.ToString().ToLowerInvariant(),
    };

    /// <summary>Of a small light beside a terminal.</summary>
    public static string OfLight(Symbol symbol) => symbol switch
    {
        Symbol.Dark => "off",
        Symbol.Flashing => "flashes",
        _ => "on",
    };

    /// <summary>Of a controller's output.</summary>
    public static string Of(OutputState state) => state switch
    {
        OutputState.Off => "off",
        OutputState.On => "on",
        OutputState.Blinking => "flashes",
        OutputState.Tripped => "tripped",
    };

    /// <summary>Of a fuse or a breaker.</summary>
    public static string Of(FuseState state) => state switch
    {
        FuseState.Whole => "whole",
        FuseState.Overloaded => "overloaded, may open after minutes",
        FuseState.Blown => "blown",
        FuseState.Cycling => "opens and closes again and again",
    };

    /// <summary>A sight's name without its dot: <c>rear cluster stop</c>.</summary>
    public static string Name(string sight) => sight.Replace('.', ' ');
}

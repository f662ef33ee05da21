using Loomwright.Simulation;

namespace Loomwright.Web.Try;

/// <summary>What is seen, in words and by the name of its symbol.</summary>
internal static class Says
{
    /// <summary>Whether it goes dark between its flashes.</summary>
    public static bool Flashes(Symbol symbol) => symbol is Symbol.Flashing or Symbol.FlashingFast or Symbol.FlashingSlowly;

    /// <summary>The same after "is" or "was": <c>flashing</c> for <c>flashes</c>.</summary>
    public static string Being(string word) => word switch
    {
        "sounds" => "sounding",
        "turns" => "turning",
        "works" => "working",
        "rests" => "at rest",
        _ => word.Replace("flashes", "flashing", StringComparison.Ordinal),
    };

    public static string Picture(Symbol symbol) => symbol switch
    {
        Symbol.Silent => "horn-silent",
        Symbol.Sounds => "horn-sounds",
        Symbol.FlashingFast or Symbol.FlashingSlowly => "lamp-flashing",
        Symbol.Turns => "motor-turns",
        Symbol.Works => "load-works",
        Symbol.Rests => "part",
        _ => $"lamp-{symbol.ToString().ToLowerInvariant()}",
    };

    public static string LightPicture(Symbol symbol) => symbol switch
    {
        Symbol.Dark => "light-off",
        Symbol.Flashing => "light-flashing",
        _ => "light-on",
    };

    public static string Word(RelaySeen relay) => relay.PulledIn ? "pulled in" : "at rest";

    /// <summary>What to say when it does not come to rest; null when it does.</summary>
    public static string? Unrest(Outcome outcome) => outcome switch
    {
        Outcome.Settled => null,
        Outcome.SwitchesByItself => "It switches on and off by itself: what is shown is one moment of it.",
        Outcome.Race => "Two things switch at once, and which is first decides what happens; one way is shown.",
        Outcome.UndefinedInput => "An input lies between its on and its off: the box may read it either way; one way is shown.",
        Outcome.Unsolved => "This could not be worked out. What is shown is not an answer.",
    };

    /// <summary>What has stopped working by itself and how it comes back, a sentence each.</summary>
    public static IEnumerable<string> Stopped(Frame now) =>
    [
        .. now.Fuses.Where(f => f.State == FuseState.Blown).Select(f => $"{f.Part} is blown: nothing behind it is fed. Find out why; “All at rest” puts a new one in."),
        .. now.Controllers.SelectMany(c => c.Outputs.Where(o => o.State == OutputState.Tripped).Select(o => $"{c.Part} {o.Terminal} ({o.Name}) has tripped: too much current at that output.")),
    ];
}

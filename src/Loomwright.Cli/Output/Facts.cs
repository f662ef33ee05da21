using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Output;

/// <summary>What is to be seen in a frame, each as a name and a word, in file order.</summary>
internal static class Facts
{
    public static IEnumerable<(string What, string Is)> Of(Frame frame)
    {
        foreach (var box in frame.Controllers)
        {
            yield return (box.Part, box.Awake ? "awake" : "asleep");
            foreach (var input in box.Inputs)
            {
                yield return ($"{Marked(box.Part, input.Terminal, input.Name)} input", input.Active ? "active" : "at rest");
            }

            foreach (var output in box.Outputs)
            {
                yield return ($"{Marked(box.Part, output.Terminal, output.Name)} output", Word(output.State));
            }

            foreach (var light in box.Lights)
            {
                yield return ($"{box.Part} {light.Terminal} light", Light(light.Symbol));
            }
        }

        foreach (var seen in frame.Seen)
        {
            yield return (seen.Name, Word(seen.Symbol));
        }

        foreach (var fuse in frame.Fuses)
        {
            yield return (fuse.Part, Word(fuse.State));
        }
    }

    /// <summary>The mark printed on the case with the owner's name beside it.</summary>
    public static string Marked(string part, string mark, string name) =>
        Names.Same(mark, name) ? $"{part} {mark}" : $"{part} {mark} ({name})";

    public static string Word(Symbol symbol) => symbol switch
    {
        Symbol.Dark => "dark",
        Symbol.Dim => "dim",
        Symbol.Lit => "lit",
        Symbol.Flashing => "flashes",
        Symbol.Silent => "silent",
        Symbol.Sounds => "sounds",
    };

    /// <summary>A small light beside a terminal: off, on, flashes.</summary>
    public static string Light(Symbol symbol) => symbol switch
    {
        Symbol.Dark => "off",
        Symbol.Flashing => "flashes",
        _ => "on",
    };

    public static string Word(OutputState state) => state switch
    {
        OutputState.Off => "off",
        OutputState.On => "on",
        OutputState.Blinking => "flashes",
        OutputState.Tripped => "tripped",
    };

    public static string Word(FuseState state) => state switch
    {
        FuseState.Whole => "whole",
        FuseState.Overloaded => "overloaded",
        FuseState.Blown => "blown",
    };

    public static string? Word(Outcome outcome) => outcome switch
    {
        Outcome.Settled => null,
        Outcome.SwitchesByItself => "switches on and off by itself",
        Outcome.Race => "depends on which of two things is faster",
        Outcome.UndefinedInput => "an input is neither on nor off; either reading ends differently",
        Outcome.Unsolved => "no answer was found for the volts and amps",
    };
}

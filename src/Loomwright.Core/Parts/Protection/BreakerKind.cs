using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A thermal breaker (docs/models/breaker.md).</summary>
internal static class BreakerKind
{
    // As a fuse: 0.1 V at its rating; it goes from 135 % up, and one that closes by itself takes some seconds each time (judgement, no source).
    private const double RatedDropVolts = 0.1;
    private const double OpensAtShare = 1.35;
    private const double CyclesPerMinute = 10;

    private static readonly Amount Rating = new("rating", "Amps printed on it.", Unit.Amp, 0.5, 500);
    private static readonly Pick Resets = new("resets", "By hand: it stays open until its button is pressed. By itself: it cools, closes, and opens again.", ["by hand", "by itself"]);

    public static Kind Kind { get; } = new(
        "breaker", "A breaker: opens when it carries too much for too long, and can be closed again.",
        [Rating.Parameter with { Required = true }, Resets.Parameter, Marks.TwoParameter("terminals", "1", "2")], Build);

    private static Model Build(Part part)
    {
        var marks = Marks.Two(part.Settings, "terminals", "1", "2");
        var ratingAmps = Rating.Of(part.Settings);
        var byHand = Resets.Of(part.Settings) == "by hand";
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements =
            [
                new Element("strip", marks.Known[0], marks.Known[1], new Ohms(RatedDropVolts / ratingAmps)) { Gate = byHand ? null : new Gate.ByFlasher("strip") },
            ],
            Controls = byHand ? [new Control(part.Name, ["in", "pressed"], "in", Momentary: true)] : [],
            Flashers = byHand ? [] : [new Flasher("strip", "strip", FlasherLaw.Overload, ratingAmps * OpensAtShare, CyclesPerMinute)],
            Protectors = [new Protector("strip", ratingAmps) { ClosesBy = byHand ? part.Name : null, ClosesByItself = !byHand }],
            Problems = marks.Problems,
        };
    }
}

using System.Collections.Immutable;

namespace Loomwright.Bench;

/// <summary>Measurements across the supply where the loads together read as low as a joint, with all unplugged that is: what they leave unshown, in words.</summary>
internal static class HiddenShorts
{
    /// <param name="steps">The steps of a stage.</param>
    /// <param name="sides">What is fed in it and what is home.</param>
    public static IEnumerable<string> Of(ImmutableArray<Step> steps, FeedSide sides)
    {
        var isPlugOff = steps.Any(s => !s.Unplugged.IsEmpty);
        return from step in steps
               where step is { Act: Act.Measure, Meter: not null } && isPlugOff == !step.Unplugged.IsEmpty
                   && sides.IsAcross(step.Meter!.RedTip.Terminal, step.Meter.BlackTip.Terminal) && !Bands.TellsAShort(step.Expect[0].Band!)
               select $"{step.Id}: what is connected there reads as low as a joint, so a short from {step.Meter!.RedTip} to {step.Meter!.BlackTip} does not show before power.";
    }
}

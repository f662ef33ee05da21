namespace Loomwright.Expressions;

/// <summary>What a condition asks for: how much of the time on, in the on-phase of a blink and in its off-phase. <c>default</c> is off.</summary>
/// <param name="Share">Share of the time on in the on-phase, 0…1; below 1 it is dimmed faster than the eye sees.</param>
/// <param name="ShareBetween">The same in the off-phase; equal to <paramref name="Share"/> when nothing blinks.</param>
public readonly record struct Level(double Share, double ShareBetween)
{
    /// <summary>Fully and steadily on.</summary>
    public static Level Full { get; } = new(1, 1);

    /// <summary>Whether it is on at all.</summary>
    public bool On => Share > 0;

    /// <summary>Whether it goes on and off; between two flashes it may still glow at <see cref="ShareBetween"/>.</summary>
    public bool Blinks => ShareBetween < Share;

    internal static Level Steady(bool on) => on ? Full : default;

    /// <summary>The weaker of the two, phase by phase.</summary>
    internal Level And(Level other) => new(Math.Min(Share, other.Share), Math.Min(ShareBetween, other.ShareBetween));

    /// <summary>The stronger of the two, phase by phase.</summary>
    internal Level Or(Level other) => new(Math.Max(Share, other.Share), Math.Max(ShareBetween, other.ShareBetween));
}

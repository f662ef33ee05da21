using System.Collections.Immutable;
using Loomwright.Parts;

namespace Loomwright.Simulation;

/// <summary>One two-ended thing of the bike as the network sees it; current is positive from → to.</summary>
/// <param name="Owner">The wire's name, the part's name, or empty for a short.</param>
/// <param name="Name">The element's name inside the part; empty for a wire.</param>
/// <param name="From">Node of its first end.</param>
/// <param name="To">Node of its other end.</param>
/// <param name="Curve">Its current at a voltage while it conducts, warm.</param>
internal sealed record Link(string Owner, string Name, int From, int To, Curve Curve)
{
    /// <summary>Whether it is a wire of the loom.</summary>
    public bool IsWire { get; init; }

    /// <summary>Whether it is metal sitting on metal between two parts.</summary>
    public bool IsJoint { get; init; }

    /// <summary>When it conducts; null: always.</summary>
    public Switching? Switching { get; init; }

    /// <summary>Its curve while it does not.</summary>
    public Curve Off { get; init; } = Ohms.OpenContact;

    /// <summary>Its curve in the first milliseconds, or null when it is the same.</summary>
    public Curve? Cold { get; init; }

    /// <summary>Its place among the fuses, or null.</summary>
    public int? Fuse { get; init; }
}

/// <summary>What decides whether a link conducts: a <see cref="Gate"/> with its names found.</summary>
internal abstract record Switching
{
    private Switching()
    {
    }

    /// <summary>A contact, closed in those positions (by place) of a control.</summary>
    public sealed record Contact(int Control, ImmutableArray<bool> Closed) : Switching;

    /// <summary>An output of a box.</summary>
    public sealed record Output(int Box, int Place) : Switching;

    /// <summary>Whatever a box feeds while it is awake.</summary>
    public sealed record Awake(int Box) : Switching;

    /// <summary>A contact of a relay.</summary>
    public sealed record Relay(int Place, bool WhenPulledIn) : Switching;

    /// <summary>A contact of a flasher.</summary>
    public sealed record Flasher(int Place) : Switching;

    /// <summary>A contact that nothing moves any more.</summary>
    public sealed record Fixed(bool Closed) : Switching;

    /// <summary>Conducts while both do.</summary>
    public sealed record Both(Switching One, Switching Other) : Switching;
}

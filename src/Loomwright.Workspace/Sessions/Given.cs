using System.Collections.Immutable;
using Loomwright.Records;

namespace Loomwright.Sessions;

/// <summary>An answer as the device hands it over.</summary>
/// <param name="Id">Made on the device when the answer was given; the same however often it is handed over.</param>
/// <param name="Step">Id of the plan's step, or of a stage's gate (<see cref="Judging.Gate"/>).</param>
/// <param name="Kind">What kind of answer it is.</param>
/// <param name="What">Which of the step's expectations it answers; empty for the step as a whole.</param>
/// <param name="Raw">What was typed or pressed.</param>
/// <param name="Of">Id of what an undo takes back.</param>
/// <param name="At">When, by the device's clock.</param>
public sealed record Given(string Id, string Step, EntryKind Kind, string? What, string? Raw, string? Of, DateTimeOffset At);

/// <summary>What came of handing answers over.</summary>
public abstract record HandedOver
{
    private HandedOver()
    {
    }

    /// <summary>They are in the record and stay there when the machine stops.</summary>
    /// <param name="NotAnswers">Ids of those that are not, since they are no answers this program understands; handing them over again does not help.</param>
    public sealed record Kept(ImmutableArray<string> NotAnswers) : HandedOver;

    /// <summary>None of them is; the device is to keep them. Says why and what to do.</summary>
    public sealed record Refused(string Why) : HandedOver;
}

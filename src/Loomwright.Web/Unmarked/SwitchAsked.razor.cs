using System.Collections.Immutable;
using Loomwright.Contacts;
using Microsoft.AspNetCore.Components;

namespace Loomwright.Web.Unmarked;

/// <summary>A switch asked about pair by pair.</summary>
public sealed partial class SwitchAsked
{
    private UnmarkedSwitch read = null!;
    private ImmutableArray<Reading> readings = [];
    private bool isClipped;
    private List<(int One, int Other)> pairs = [];

    [Parameter, EditorRequired]
    public Bike Bike { get; set; } = null!;

    /// <summary>The design's path in the folder.</summary>
    [Parameter, EditorRequired]
    public string Path { get; set; } = "";

    [Parameter, EditorRequired]
    public NamedThings Begun { get; set; } = null!;

    protected override void OnInitialized()
    {
        pairs = [.. Enumerable.Range(0, Begun.Leads.Length).SelectMany(one => Enumerable.Range(one + 1, Begun.Leads.Length - one - 1).Select(other => (one, other)))];
        Work();
    }

    private void Take(Reading reading)
    {
        readings = readings.Add(reading);
        Work();
    }

    private void Clip(bool clipped)
    {
        isClipped = clipped;
        Work();
    }

    private void Undo()
    {
        readings = readings.RemoveAt(readings.Length - 1);
        Work();
    }

    private void Work() => read = UnmarkedSwitch.Of(Begun.Leads, Begun.Positions, readings, isClipped);

    // What follows from other readings is told apart from what was touched.
    private bool? Read(int position, int one, int other) => readings.Any(r => r.Is(position, one, other)) ? read.Measured(position, one, other) : null;

    private string Word(int position, int one, int other) => Read(position, one, other) switch { true => "joined", false => "open", _ => "not touched" };
}

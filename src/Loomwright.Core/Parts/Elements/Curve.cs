namespace Loomwright.Parts;

/// <summary>The current of a two-ended element at a voltage.</summary>
public abstract record Curve;

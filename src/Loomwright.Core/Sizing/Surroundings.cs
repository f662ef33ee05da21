using Loomwright.Quantities;

namespace Loomwright.Sizing;

/// <summary>What a wire lies in: it decides how much it may carry.</summary>
/// <param name="Ambient">Air around it.</param>
/// <param name="Insulation">Temperature class of its insulation.</param>
/// <param name="Bundle">Loaded wires that run together, itself included; 1 or more.</param>
public sealed record Surroundings(Temperature Ambient, Temperature Insulation, int Bundle = 1);

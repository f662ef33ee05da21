using System.ComponentModel;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Loomwright.Verbs;

namespace Loomwright.Answers;

/// <summary>What every machine-readable answer begins with. Keys are in snake case; a number is a number or null.</summary>
/// <param name="verb">The verb that answers; names the schema.</param>
/// <param name="design">The file it answers from, or null when none was needed.</param>
/// <param name="whole">False when the answer leaves something out.</param>
public abstract class Answer(string verb, OpenedDesign? design, bool whole = true)
{
    [JsonPropertyOrder(-7)]
    [Description("Names the schema this answer obeys: loomwright/VERB/VERSION.")]
    public string Schema { get; } = $"loomwright/{verb}/1";

    [JsonPropertyOrder(-6)]
    [Description("Program and version.")]
    public string Tool { get; } = CommandLine.Tool;

    [JsonPropertyOrder(-5)]
    [Description("The design file as it was named, or null when no file was needed.")]
    public string? File { get; } = design?.Stored.Path;

    [JsonPropertyOrder(-4)]
    [Description("SHA-256 of the file's bytes in lower-case hex, or null when no file was needed.")]
    public string? Sha256 { get; } = design?.Stored.Sha256;

    [JsonPropertyOrder(-3)]
    [Description("The unit behind every key that ends in it.")]
    public Units Units { get; } = new();

    [JsonPropertyOrder(-2)]
    [Description("The terminal that is 0 V, or null when the design has no supply.")]
    public string? Reference { get; } = design?.Reference;

    [JsonPropertyOrder(-1)]
    [Description("False when part of the file could not be read: the answer is from the rest.")]
    public bool Complete { get; } = whole && (design?.Bike.IsComplete ?? true);

    private static readonly JsonSerializerOptions Readable = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        NewLine = "\n",
        WriteIndented = true,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
    };

    /// <summary>How answers become text, and what their schemas are made by.</summary>
    public static JsonSerializerOptions Options => Readable;

    public string ToJson() => JsonSerializer.Serialize(this, GetType(), Readable);
}

/// <summary>Units of the numbers in an answer.</summary>
public sealed record Units
{
    public string Volts { get; } = "V";

    public string Amps { get; } = "A";

    public string Seconds { get; } = "s";

    public string Light { get; } = "share of the same lamp alone in the healthy design";
}

using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Loomwright.Tests;

/// <summary>An answer with its numbers cut to six figures, so that a golden does not hang on a processor's last bit.</summary>
public static class SixFigures
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(string json) => Cut(JsonNode.Parse(json))!.ToJsonString(Readable) + "\n";

    // Below this a current or a voltage is what the arithmetic leaves over.
    private const double Nothing = 1e-9;

    private static JsonNode? Cut(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Select(p => KeyValuePair.Create(p.Key, Cut(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Cut)]),
        JsonValue v when v.GetValueKind() == JsonValueKind.Number => JsonValue.Create(Cut(v.GetValue<double>())),
        _ => node?.DeepClone(),
    };

    private static double Cut(double number) => Math.Abs(number) < Nothing
        ? 0
        : double.Parse(number.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}

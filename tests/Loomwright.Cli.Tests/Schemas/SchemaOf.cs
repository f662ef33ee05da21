using System.ComponentModel;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using Loomwright.Answers;

namespace Loomwright.Tests.Schemas;

/// <summary>The published schema of an answer, made from the record the answer is written from.</summary>
public static class SchemaOf
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly JsonSchemaExporterOptions Strict = new() { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Describe };

    public static string Answer(Type answer, string verb)
    {
        var body = Answers.Answer.Options.GetJsonSchemaAsNode(answer, Strict).AsObject();
        body["properties"]!["schema"] = new JsonObject { ["const"] = $"loomwright/{verb}/1" };
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = $"urn:loomwright:{verb}:1",
            ["title"] = $"What loomwright {verb.Replace('-', ' ')} answers",
        };
        foreach (var (key, value) in body.ToList())
        {
            body.Remove(key);
            schema[key] = value;
        }

        return schema.ToJsonString(Readable) + "\n";
    }

    private static JsonNode Describe(JsonSchemaExporterContext context, JsonNode node)
    {
        if (node is not JsonObject schema)
        {
            return node;
        }

        if (schema["properties"] is JsonObject properties)
        {
            // Every key is always written, unknown values as null.
            schema["required"] = new JsonArray([.. properties.Select(p => (JsonNode)p.Key)]);
        }

        // The exporter takes a key nobody can set for one that may be null.
        if (context.PropertyInfo is { Set: null, IsGetNullable: false } && schema["type"] is JsonArray types)
        {
            schema["type"] = types[0]!.DeepClone();
        }

        var told = context.PropertyInfo?.AttributeProvider?.GetCustomAttributes(typeof(DescriptionAttribute), inherit: true).OfType<DescriptionAttribute>().FirstOrDefault();
        if (told is not null)
        {
            schema["description"] = told.Description;
        }

        return schema;
    }
}

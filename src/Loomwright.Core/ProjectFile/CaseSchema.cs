using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Loomwright.Parts;

namespace Loomwright.ProjectFile;

/// <summary>The JSON Schema (draft 2020-12) of a case file, made from what its grammar declares.</summary>
internal static class CaseSchema
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema as text, the same bytes every time.</summary>
    public static string Text()
    {
        var sighting = Keys(CaseGrammar.SightingLists.Select(p => (p, Texts())).Append((CaseGrammar.See, new JsonObject { ["type"] = "object", ["minProperties"] = 1, ["additionalProperties"] = Texts() })));
        var file = Keys(
            CaseGrammar.Words.Select(p => (p, One(p)))
            .Concat(CaseGrammar.Lists.Select(p => (p, Texts())))
            .Append((CaseGrammar.Saw, new JsonObject { ["type"] = "array", ["minItems"] = 1, ["items"] = sighting })));
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = "urn:loomwright:case:1",
            ["title"] = "Loomwright fault case, version 1",
        };
        foreach (var (key, value) in file.ToList())
        {
            file.Remove(key);
            schema[key] = value;
        }

        return schema.ToJsonString(Indented) + "\n";
    }

    private static JsonObject One(Parameter parameter) => parameter.Form is Form.Choice choice
        ? new JsonObject { ["enum"] = new JsonArray([.. choice.Options.Select(o => (JsonNode)o)]) }
        : new JsonObject { ["type"] = "string" };

    private static JsonObject Texts() => new()
    {
        ["anyOf"] = new JsonArray(new JsonObject { ["type"] = "string" }, new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["type"] = "string" } }),
    };

    private static JsonObject Keys(IEnumerable<(Parameter Key, JsonObject Value)> keys)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        foreach (var (key, value) in keys)
        {
            value["description"] = key.Meaning;
            properties[key.Key] = value;
            if (key.Required)
            {
                required.Add(key.Key);
            }
        }

        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["patternProperties"] = new JsonObject { ["^[xX]-"] = true },
            ["additionalProperties"] = false,
            ["required"] = required,
        };
    }
}

using System.Text.Json;
using System.Text.Json.Nodes;
using Loomwright.Parts;
using Loomwright.Quantities;

namespace Loomwright.ProjectFile;

/// <summary>
/// The JSON Schema (draft 2020-12) of a design, made from what the grammar and the kinds declare, for editors that complete and
/// check while one types. It knows shapes and words; whether a terminal exists only the reader can tell.
/// </summary>
internal static class DesignSchema
{
    private const string NamePattern = @"^[\p{L}\p{N}\p{M} /()+'-]{1,80}$";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema as text, the same bytes every time.</summary>
    public static string Text()
    {
        var root = Keys(Grammar.File);
        var properties = root["properties"]!.AsObject();
        properties["distances"] = ListOf(Grammar.Distance);
        properties["parts"] = OwnNames(Reference("part"));
        properties["wires"] = ListOf(Grammar.Wire);
        properties["functions"] = OwnNames(FunctionEntry());
        properties["bench"] = Object(new JsonObject { ["stand-ins"] = ListOf(Grammar.StandIn) });
        properties["layout"] = OwnNames(new JsonObject { ["type"] = "array", ["items"] = Of(new Form.Quantity(Unit.One, 0, 0)), ["minItems"] = 2, ["maxItems"] = 4 });
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = "urn:loomwright:design:1",
            ["title"] = "Loomwright design, version 1",
        };
        foreach (var (key, value) in root.ToList())
        {
            root.Remove(key);
            schema[key] = value;
        }

        schema["$defs"] = Definitions();
        return schema.ToJsonString(Indented) + "\n";
    }

    private static JsonObject Definitions()
    {
        var definitions = new JsonObject
        {
            ["word"] = new JsonObject { ["type"] = new JsonArray("string", "number", "boolean") },
            ["words"] = new JsonObject { ["anyOf"] = new JsonArray(Reference("word"), new JsonObject { ["type"] = "array", ["items"] = Reference("word") }) },
            ["pairs"] = new JsonObject { ["type"] = new JsonArray("array", "null"), ["items"] = new JsonObject { ["type"] = "array", ["items"] = Reference("word"), ["minItems"] = 2, ["maxItems"] = 2 } },
        };
        foreach (var unit in Enum.GetValues<Unit>())
        {
            definitions[Name(unit)] = new JsonObject { ["type"] = new JsonArray("string", "number"), ["pattern"] = TypedUnits.Pattern(unit), ["examples"] = new JsonArray(TypedUnits.Example(unit)) };
        }

        var kinds = new JsonArray();
        foreach (var kind in Kinds.All)
        {
            var keys = Keys(PartsReader.Known(kind));
            keys["properties"]!["kind"] = new JsonObject { ["const"] = kind.Name };
            keys["description"] = kind.Meaning;
            definitions[Name(kind)] = keys;
            kinds.Add(new JsonObject
            {
                ["if"] = new JsonObject { ["properties"] = new JsonObject { ["kind"] = new JsonObject { ["const"] = kind.Name } } },
                ["then"] = Reference(Name(kind)),
            });
        }

        definitions["part"] = new JsonObject
        {
            ["type"] = "object",
            ["properties"] = new JsonObject { ["kind"] = new JsonObject { ["enum"] = new JsonArray([.. Kinds.All.Select(k => (JsonNode)k.Name)]) } },
            ["required"] = new JsonArray("kind"),
            ["allOf"] = kinds,
        };
        return definitions;
    }

    private static JsonObject Of(Form form) => form switch
    {
        Form.Quantity quantity => Reference(Name(quantity.Unit)),
        Form.Choice { Options: [Grammar.Version] } => new JsonObject { ["enum"] = new JsonArray(Grammar.Version, int.Parse(Grammar.Version, System.Globalization.CultureInfo.InvariantCulture)) },
        Form.Choice choice => new JsonObject { ["enum"] = new JsonArray([.. choice.Options.Select(o => (JsonNode)o)]) },
        Form.Names => Reference("words"),
        Form.Pairs => Reference("pairs"),
        Form.Each each => OwnNames(Of(each.Entry)),
        Form.Keys keys => Keys(keys.Parameters),
        _ => Reference("word"),
    };

    private static JsonObject Keys(IEnumerable<Parameter> parameters)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        foreach (var parameter in parameters)
        {
            var value = Of(parameter.Form);
            value["description"] = parameter.Meaning;
            properties[parameter.Key] = value;
            if (parameter.Required)
            {
                required.Add(parameter.Key);
            }
        }

        var keys = Object(properties);
        if (required.Count > 0)
        {
            keys["required"] = required;
        }

        return keys;
    }

    private static JsonObject FunctionEntry()
    {
        var entry = Keys(Grammar.Function);
        foreach (var key in new[] { "shows", "may" })
        {
            var seen = new JsonObject { ["type"] = new JsonArray("object", "null"), ["additionalProperties"] = new JsonObject { ["enum"] = new JsonArray([.. Grammar.Symbols.Select(s => (JsonNode)s)]) } };
            seen["description"] = entry["properties"]![key]!["description"]!.DeepClone();
            entry["properties"]![key] = seen;
        }

        return entry;
    }

    private static JsonObject Object(JsonObject properties) => new()
    {
        ["type"] = "object",
        ["properties"] = properties,
        ["patternProperties"] = new JsonObject { ["^[xX]-"] = true },
        ["additionalProperties"] = false,
    };

    private static JsonObject OwnNames(JsonObject entry) => new()
    {
        ["type"] = new JsonArray("object", "null"),
        ["propertyNames"] = new JsonObject { ["pattern"] = NamePattern },
        ["additionalProperties"] = entry,
    };

    private static JsonObject ListOf(IEnumerable<Parameter> item) => new() { ["type"] = new JsonArray("array", "null"), ["items"] = Keys(item) };

    private static JsonObject Reference(string definition) => new() { ["$ref"] = "#/$defs/" + definition };

    private static string Name(Kind kind) => "kind-" + kind.Name.Replace(' ', '-');

    private static string Name(Unit unit) => "quantity-" + unit.ToString().ToLowerInvariant();
}

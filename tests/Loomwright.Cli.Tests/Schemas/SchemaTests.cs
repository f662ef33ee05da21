using System.Text.Json.Nodes;
using Json.Schema;
using Loomwright.Answers;

namespace Loomwright.Tests.Schemas;

/// <summary>The schemas under <c>docs/schemas</c> are what the answers are.</summary>
public sealed class SchemaTests
{
    private static readonly Dictionary<string, (Type Answer, string[] Call)> Verbs = new(StringComparer.Ordinal)
    {
        ["check"] = (typeof(CheckAnswer), ["check", Called.Bench]),
        ["try"] = (typeof(TryAnswer), ["try", Called.Bench, "--set", "lock=riding", "--wait", "1s"]),
        ["list-parts"] = (typeof(PartsAnswer), ["list", "parts", Called.Bench]),
        ["list-controls"] = (typeof(ControlsAnswer), ["list", "controls", Called.Bench]),
        ["list-faults"] = (typeof(FaultsAnswer), ["list", "faults", Called.Bench]),
        ["list-kinds"] = (typeof(KindsAnswer), ["list", "kinds"]),
        ["explain"] = (typeof(ExplainAnswer), ["explain", "unfused-feed"]),
        ["walk"] = (typeof(WalkAnswer), ["walk", Called.Bench]),
        ["size"] = (typeof(SizeAnswer), ["size", Called.Bench]),
        ["contacts"] = (typeof(ContactsAnswer), ["contacts", "--leads", "red, brown, black", "--positions", "off, on, lights"]),
        ["trouble"] = (typeof(TroubleAnswer), ["trouble", Called.Bench, "--saw", "lock=riding, front brake=pressed: rear cluster stop=dark, box.X4=on"]),
        ["trouble-case"] = (typeof(CaseAnswer), ["trouble", "--case", Path.Combine(Repository.Root, "tests/published/cases/04")]),
        ["record"] = (typeof(RecordAnswer), ["record", Called.Bench]),
        ["plan"] = (typeof(PlanAnswer), ["plan", Called.Bench]),
    };

    public static TheoryData<string> Names => [.. Verbs.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_published_schema_is_made_from_the_answer(string verb) =>
        Golden.Check($"../../../docs/schemas/{verb}.schema.json", SchemaOf.Answer(Verbs[verb].Answer, verb));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_real_answer_obeys_its_published_schema(string verb)
    {
        var answer = JsonNode.Parse(Called.Once([.. Verbs[verb].Call, "--json"]).Out)!;
        var result = Schema(verb).Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(answer), new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(result.IsValid, string.Join('\n', result.Details?.Where(d => d.Errors is not null).Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Values)}") ?? []));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_key_the_schema_does_not_know_is_refused(string verb)
    {
        var answer = JsonNode.Parse(Called.Once([.. Verbs[verb].Call, "--json"]).Out)!.AsObject();
        answer["surprise"] = 1;
        Assert.False(Schema(verb).Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(answer)).IsValid);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_key_left_out_of_the_head_is_refused(string verb)
    {
        var answer = JsonNode.Parse(Called.Once([.. Verbs[verb].Call, "--json"]).Out)!.AsObject();
        Assert.True(answer.Remove("sha256"));
        Assert.False(Schema(verb).Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(answer)).IsValid);
    }

    private static JsonSchema Schema(string verb) =>
        JsonSchema.FromText(Repository.Read($"docs/schemas/{verb}.schema.json"), new BuildOptions { SchemaRegistry = new SchemaRegistry() });
}

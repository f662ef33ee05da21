using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Loomwright.Bench;
using Loomwright.Records;
using Loomwright.Text;

namespace Loomwright.Sessions;

/// <summary>The steps of a plan as a session keeps them: whatever checks are worked out later, it goes on along these. Stages and what is connected in each are made anew from the design it keeps.</summary>
internal static class KeptPlan
{
    private static readonly JsonSerializerOptions Options = new()
    {
        IgnoreReadOnlyProperties = true,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new JsonStringEnumConverter() },
    };

    /// <summary>The steps of every stage, by its number.</summary>
    public static string Text(Plan plan) => JsonSerializer.Serialize(plan.Stages.ToDictionary(s => s.Number, s => s.Steps), Options);

    /// <summary>What the steps are named by.</summary>
    public static string Name(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>The plan a session follows, with the steps it keeps.</summary>
    public static Plan Of(BenchSession session, RecordFile records) => Of(session, Bike.Read(new SourceText(session.Bike, records.Text(session.Design)!)), records);

    /// <summary>The same on its design, which has been read already.</summary>
    public static Plan Of(BenchSession session, Bike bike, RecordFile records)
    {
        var plan = session.Plan == BenchSession.OnTheBike ? bike.PlanOnTheBike() : bike.Plan();
        if (session.Steps is null || records.Text(session.Steps) is not { } text)
        {
            return plan;
        }

        var kept = JsonSerializer.Deserialize<Dictionary<int, ImmutableArray<Step>>>(text, Options)!;
        return plan with { Stages = [.. plan.Stages.Select(s => kept.TryGetValue(s.Number, out var steps) ? s with { Steps = steps } : s)] };
    }
}

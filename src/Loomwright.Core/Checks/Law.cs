using System.Collections.Immutable;
using Loomwright.Findings;
using Loomwright.Text;

namespace Loomwright.Checks;

/// <summary>A rule of some country's law or inspection. What counts on a bike depends on the country, its first registration and its class.</summary>
/// <param name="Name">As it is cited.</param>
/// <param name="Where">Where it counts.</param>
/// <param name="Read">Whether its wording was read; else it is told from memory and never more than a note.</param>
/// <param name="Countries">How owners write those countries.</param>
internal sealed record Law(string Name, string Where, bool Read, ImmutableArray<string> Countries)
{
    private static readonly ImmutableArray<string> Contracting =
    [
        "UN", "UNECE", "EU", "Germany", "DE", "Deutschland", "France", "FR", "Italy", "IT", "Spain", "ES", "Netherlands", "NL", "Belgium", "BE",
        "Austria", "AT", "Switzerland", "CH", "Sweden", "SE", "Poland", "PL",
    ];

    private static readonly ImmutableArray<string> States = ["USA", "US", "United States", "United States of America"];
    private static readonly ImmutableArray<string> Australian = ["Australia", "AU", "AUS"];
    private static readonly ImmutableArray<string> British = ["Great Britain", "GB", "UK", "United Kingdom"];

    /// <summary>A paragraph of UN Regulation 53.</summary>
    public static Law UnitedNations(string paragraph, bool read) => new($"UN Regulation 53{paragraph}", "the countries that apply the UN regulations", read, Contracting);

    /// <summary>A US rule.</summary>
    public static Law UnitedStates(string name) => new(name, "the USA", Read: true, States);

    public static Law Australia(string name) => new(name, "Australia", Read: true, Australian);

    /// <summary>The British motorcycle inspection manual.</summary>
    public static Law GreatBritain { get; } = new("the motorcycle inspection manual", "Great Britain", Read: true, British);

    /// <summary>What inspectors ask in several countries, from memory.</summary>
    public static Law Inspection { get; } = new("inspection practice", "several countries", Read: false, []);

    /// <summary>A look where the owner's country is one it counts in and its wording was read, else a note.</summary>
    public Severity For(string? country) => Read && Covers(country) ? Severity.Look : Severity.Note;

    public bool Covers(string? country) => country is not null && Countries.Contains(country, Names.Comparer);

    /// <summary>The one of several that counts in the owner's country, or the first.</summary>
    public static Law Choose(string? country, params ReadOnlySpan<Law> laws)
    {
        foreach (var law in laws)
        {
            if (law.Covers(country))
            {
                return law;
            }
        }

        return laws[0];
    }

    /// <summary>A finding about this law: as severe as it may be in the owner's country, with what it is called and where it counts, and to be checked.</summary>
    public Finding Finding(string code, string? country, Subject where, string what, string why, string cure, ImmutableArray<Evidence> facts) =>
        new(code, For(country), where, what, why, cure + CheckYours, [.. facts, .. Facts(country)]);

    private const string CheckYours = " {yours}: check what counts for your bike, by its country, first registration and class.";

    private ImmutableArray<Evidence> Facts(string? country) =>
    [
        Evidence.Of("law", Read ? Name : $"{Name} (from memory)"),
        Evidence.Of("where", Where),
        Evidence.Of("yours", country is null ? "Your country is not set in the file" : Covers(country) ? $"Your country is {country}, where it counts" : $"Your country is {country}; whether this counts there is not known here"),
    ];
}

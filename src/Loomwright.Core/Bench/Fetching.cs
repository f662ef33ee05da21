using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>What to have on the table before a stage, and what to take out first.</summary>
internal static class Fetching
{
    private const string OrALead = " (or a lead with ";
    private const string IfYouUse = ", if you use one";

    public static void Write(Site site, Steps steps)
    {
        foreach (var part in site.NewParts)
        {
            steps.Add(Act.Fetch, PartText(site, part), s => s with
            {
                Part = part.Name,
                Marks = [new Mark(new TerminalRef(part.Name, ""), null)],
                Cautions = CautionsFor(site, part),
            });
        }

        foreach (var wire in site.NewWires)
        {
            steps.Add(Act.Fetch, $"Wire {wire.Name}: {Looks(wire)}, {wire.Length}.", s => s with { Wire = wire.Name });
        }

        foreach (var (part, amps) in ChangedFuses(site))
        {
            steps.Add(Act.Fetch, $"A {FuseText(amps)} for {part}.");
        }

        foreach (var (part, amps) in ChangedLeads(site))
        {
            steps.Add(Act.Fetch, $"A {FuseText(amps)} for the lead in place of {part}{IfUsed(site, part)}.");
        }

        steps.Add(Act.Fetch, site.IsFirst
            ? "A meter, set to Ω, with tips and two clip-on leads; a red and a black clip lead, at most 0.1 m each, as thick as the wire they go on; caps for bare ends and clips."
            : "The meter, set to Ω.");
    }

    public static void WriteTakeOut(Site site, Steps steps)
    {
        foreach (var part in site.Aside.Except(site.AsideBefore, Names.Comparer))
        {
            steps.Add(Act.TakeOut, $"{part}: its leads off and capped. With the key on it would run all the time, and it is made for seconds.", s => s with { Part = part, Cautions = site.Once.Say(Cautions.BareEnds) });
        }

        foreach (var (part, amps) in ChangedFuses(site).Where(f => site.FusesBefore.ContainsKey(f.Part)))
        {
            steps.Add(Act.TakeOut, $"{part}: take the {new Current(site.FusesBefore[part]).Printed} fuse out, put the {FuseText(amps)} in.", s => s with { Part = part });
        }

        foreach (var (part, amps) in ChangedLeads(site))
        {
            steps.Add(Act.TakeOut, $"The lead in place of {part}{IfUsed(site, part)}: take the {new Current(site.LeadFusesBefore[part]).Printed} fuse out, put the {FuseText(amps)} in.");
        }
    }

    /// <summary>Colour and size of a wire: <c>GN/WH 0.5 mm²</c>.</summary>
    public static string Looks(Wire wire) => wire.Colour is { } colour ? $"{colour} {wire.Size}" : $"{wire.Size}, any colour";

    public static string FuseText(double amps)
    {
        var colour = BladeFuses.Colour(amps);
        return $"{new Current(amps).Printed} fuse{(colour.Length == 0 ? "" : $" ({colour})")}";
    }

    private static IEnumerable<(string Part, double Amps)> ChangedFuses(Site site) => site.Whole.Loom.Parts
        .Where(p => site.Fuses.TryGetValue(p.Name, out var now) && (!site.FusesBefore.TryGetValue(p.Name, out var before) || before != now))
        .Select(p => (p.Name, site.Fuses[p.Name]));

    private static IEnumerable<(string Part, double Amps)> ChangedLeads(Site site) => site.LeadFuses
        .Where(l => site.LeadFusesBefore.TryGetValue(l.Key, out var before) && before != l.Value)
        .OrderBy(l => l.Key, StringComparer.Ordinal)
        .Select(l => (l.Key, l.Value));

    private static string IfUsed(Site site, string part) => site.StandIns.ContainsKey(part) ? "" : IfYouUse;

    private static string PartText(Site site, Part part)
    {
        if (Names.Same(part.Name, Supplied.Fuse))
        {
            return $"{part.Name}, not in the file: a fuse holder for the bench, since there is no fuse at {site.Mark(site.Whole.Feed)}.";
        }

        var called = Names.Same(part.Name, part.Kind) ? part.Name : $"{part.Name}, {Article(part.Kind)} {part.Kind}";
        if (site.StandIns.TryGetValue(part.Name, out var used))
        {
            var fuse = site.IsKey(part.Name) ? $", with {KeyLead(site, part)}" : "";
            return $"In place of {called}: {used}{fuse}.";
        }

        var model = site.Model(part.Name);
        var instead = StandIns.LampInstead(model) is { } lamp ? $" (or {lamp} in its place)"
            : !StandIns.CanBeLead(site.Whole.Loom, part.Name) ? ""
            : site.IsKey(part.Name) ? $"{OrALead}{KeyLead(site, part)})"
            : " (or a lead in its place)";
        var holder = model.Protectors.IsEmpty ? "" : site.Fuses.ContainsKey(part.Name) ? ": its holder" : !IsFuse(part) ? "" : $": its holder and a {FuseText(part.Settings.Number("rating") ?? 0)}";
        return $"{called}{holder}{instead}.";
    }

    /// <summary>Whether what a step asks to fetch holds a fuse only for a lead that may be used in place of a part.</summary>
    public static bool FuseIsForChoice(string text) => text.Contains(OrALead, StringComparison.Ordinal) || text.Contains(IfYouUse, StringComparison.Ordinal);

    /// <summary>Whether a fuse is put into it.</summary>
    public static bool IsFuse(Part part) => part.Kind == "fuse";

    private static string KeyLead(Site site, Part part) => site.LeadFuses.TryGetValue(part.Name, out var amps) ? $"a {FuseText(amps)} and a bench switch in it" : "a small fuse and a bench switch in it";

    /// <summary><c>a</c> or <c>an</c>.</summary>
    public static string Article(string kind) => "aeiou".Contains(kind[0], StringComparison.OrdinalIgnoreCase) ? "an" : "a";

    private static System.Collections.Immutable.ImmutableArray<string> CautionsFor(Site site, Part part)
    {
        var model = site.Model(part.Name);
        if (model.Supply is not { } supply)
        {
            return [];
        }

        return site.Once.Say(supply.LimitAmps is null ? Cautions.Of(part) : Cautions.BenchSupply);
    }
}

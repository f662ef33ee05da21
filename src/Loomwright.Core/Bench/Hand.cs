using Loomwright.Checks;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>What a hand does to a control or to the lead that stands in for it, in words.</summary>
internal static class Hand
{
    public static string Does(Site site, Operation.Set operation)
    {
        var worked = Names.Same(operation.Control, Engine.Control.Name) ? site.Whole.Loom.Parts.Where(p => IsOfTheEngine(site, p)).ToList() : [];
        if (worked.Count > 0)
        {
            var leads = worked.Select(p => $"{(IsClosed(site, p, operation) ? "put the lead on" : "take the lead off")} {site.Mark(site.Model(p.Name).Terminals.Select(t => new TerminalRef(p.Name, t.Mark)).First(t => IsWired(site, t)))}");
            return $"For the engine at {operation.Position}, which itself stays still: {string.Join(", ", leads)}.";
        }

        var part = site.PartOf(operation.Control);
        var control = part is null ? null : site.Model(part.Name).Controls.First(c => Names.Same(c.Name, operation.Control));
        if (part is null || control is null)
        {
            return $"Set {operation.Control} to {operation.Position}.";
        }

        var rests = Names.Same(operation.Position, control.Rest);
        if (site.StandIns.TryGetValue(part.Name, out var lead))
        {
            return WithLead(site, part, operation.Position, lead, rests);
        }

        return control.Momentary
            ? rests ? $"Let go of {control.Name}." : $"Press {control.Name} and hold it."
            : $"Set {control.Name} to {operation.Position}.";
    }

    /// <summary>Whether a contact is worked by the running engine, which no bench has: its lead comes off and goes on in its stead.</summary>
    public static bool IsOfTheEngine(Site site, Part part) => StandIns.CanBeLead(site.Whole.Loom, part.Name)
        && site.Model(part.Name).Controls.Any(c => Names.Same(c.Name, Engine.Control.Name)) && site.Model(part.Name).Terminals.Any(t => IsWired(site, new(part.Name, t.Mark)));

    /// <summary>Whether any of a part's contacts is closed after it.</summary>
    public static bool IsClosed(Site site, Part part, Operation.Set operation) => site.Whole.Ties.Any(t =>
        t.Part == part && t.Via == Via.Contact && t.IsClosed(new Dictionary<string, string>(Names.Comparer) { [operation.Control] = operation.Position }));

    /// <summary>The two wire ends a stand-in lead joins in a position: the first contact closed there whose both ends are wired in this stage.</summary>
    public static Tie? Pair(Site site, Part part, string position) => site.Whole.Ties.FirstOrDefault(t =>
        t.Part == part && t.Via == Via.Contact && t.IsClosed(new Dictionary<string, string>(Names.Comparer) { [((Gate.ByControl)t.Element!.Gate!).Control] = position })
        && IsWired(site, t.A) && IsWired(site, t.B));

    public static bool IsWired(Site site, TerminalRef at) => site.Whole.At(at).Any(t => t.Wire is { } w && site.Reach.Wires.Contains(w.Name, Names.Comparer));

    private static string WithLead(Site site, Part part, string position, string lead, bool rests)
    {
        var known = Spoken.Known(lead);
        if (site.IsKey(part.Name))
        {
            return $"{(rests ? "Open" : "Close")} the bench switch in {known} that stands in for {part.Name}{(rests ? "" : $" at {position}")}.";
        }

        var used = site.Line.Do.Concat(site.Again?.Do ?? []).FirstOrDefault(o => Names.Same(o.Control, part.Name))?.Position ?? position;
        if (Pair(site, part, rests ? used : position) is not { } pair)
        {
            return rests ? $"Take {known} away from {part.Name}." : $"Hold {known} in place of {part.Name} at {position}.";
        }

        return rests
            ? $"Take {known} off the wire for {site.Mark(pair.A)}."
            : $"Hold {known} from the wire for {site.Mark(pair.A)} to the wire for {site.Mark(pair.B)}, in place of {part.Name}.";
    }
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Faults;

/// <summary>A fault that was read, or the one thing that stopped it.</summary>
public sealed record FaultReading(Fault? Fault, Problem? Problem);

/// <summary>
/// Reads the text id of a fault against a loom. Names may hold any of the id's own words: the longest declared name
/// that lets the rest be read wins.
/// </summary>
public static class FaultText
{
    private const string Forms =
        "open: WIRE, moved: WIRE end TERMINAL to TERMINAL, swapped: TERMINAL with TERMINAL, lost: GROUND, short: TERMINAL to TERMINAL, dead: PART or PART.LAMP, reversed: PART, high: JOINT 0.5 ohm, stuck: SWITCH at POSITION, leak: PART 30 ohm, setting: PART KEY VALUE";

    /// <summary>The fault in the owner's spelling, whatever the case and blanks it was typed with.</summary>
    public static FaultReading Read(string text, Loom loom)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        return colon < 0
            ? Stop(text, "a fault starts with what is wrong and a colon", $"write one of {Forms}")
            : new Reader(text, Names.Fold(text[(colon + 1)..]), loom).Read(Names.Fold(text[..colon]));
    }

    private static FaultReading Stop(string text, string what, string cure) => new(null, new Problem(text, what, cure));

    private sealed class Reader(string text, string rest, Loom loom)
    {
        private readonly Wiring _wiring = Wiring.Of(loom);

        private ImmutableArray<string> Wires => [.. loom.Wires.Select(w => w.Name)];

        private ImmutableArray<string> Parts => [.. loom.Parts.Select(p => p.Name)];

        private ImmutableArray<TerminalRef> Terminals => [.. _wiring.Points.Select(p => p.Terminal)];

        public FaultReading Read(string wrong) => wrong switch
        {
            "open" => One(rest, Wires, "wire") is { Name: { } wire } ? Fine(new Fault.Open(wire)) : Unknown(rest, Wires, "wire"),
            "moved" => Moved(),
            "swapped" => Two(" with ", (a, b) => new Fault.Swapped(a, b)),
            "lost" => Lost(),
            "short" => Two(" to ", (a, b) => new Fault.Shorted(a, b)),
            "dead" => Dead(),
            "reversed" => Reversed(),
            "high" => Ohms(Joints, "joint", (joint, ohms) => new Fault.High(joint, ohms)),
            "stuck" => Stuck(),
            "leak" => Ohms(Leaking, "part with contacts", (part, ohms) => new Fault.Leak(part, ohms)),
            "setting" => Setting(),
            _ => Stop(text, $"{wrong} is not a kind of fault", $"write one of {Forms}"),
        };

        private static (string? Name, string Kind) One(string sought, ImmutableArray<string> names, string kind) =>
            (names.FirstOrDefault(n => Names.Fold(n) == sought), kind);

        private static FaultReading Fine(Fault fault) => new(fault, null);

        private FaultReading Unknown(string sought, IEnumerable<string> names, string kind) =>
            Stop(text, $"no {kind} is called {sought}", Nearest.To(sought, names) is { } near ? $"write {near}" : $"look the {kind} up in the list of the design's {kind}s");

        private FaultReading Moved()
        {
            foreach (var (wire, ends) in Cut(rest, Wires, " end "))
            {
                foreach (var (from, last) in Cut(ends, Terminals.Select(t => t.ToString()), " to "))
                {
                    if (Terminal(last) is { } to)
                    {
                        return MovedTo(loom.Wire(wire)!, Terminal(from)!.Value, to);
                    }
                }
            }

            return Cut(rest, Wires, " end ").Select(c => Ends(c.After, " to ")).FirstOrDefault()
                ?? Unknown(rest.Split(" end ")[0], Wires, "wire");
        }

        private FaultReading MovedTo(Wire wire, TerminalRef end, TerminalRef to)
        {
            if (wire.From != end && wire.To != end)
            {
                return Stop(text, $"{wire.Name} has no end on {end}", $"write its end as {wire.From} or {wire.To}");
            }

            return end == to || Nets.Without(_wiring, wire.Name).Joins(end, to)
                ? Stop(text, $"other wires join {end} and {to} anyway: moved there, nothing changes", "name a terminal that is not joined to it")
                : Fine(new Fault.Moved(wire.Name, end, to));
        }

        private FaultReading Two(string between, Func<TerminalRef, TerminalRef, Fault> fault)
        {
            foreach (var (first, last) in Cut(rest, Terminals.Select(t => t.ToString()), between))
            {
                if (Terminal(last) is { } b)
                {
                    var a = Terminal(first)!.Value;
                    return a == b ? Stop(text, $"{a} is named twice", "name two terminals") : Fine(fault(a, b));
                }
            }

            return Ends(rest, between);
        }

        private FaultReading Dead()
        {
            var all = _wiring.Parts.SelectMany(p => p.Model.Inside.Select(i => new Fault.Dead(p.Name, i)).Prepend(new Fault.Dead(p.Name)));
            return all.FirstOrDefault(f => Names.Fold(f.ToString()["dead: ".Length..]) == rest) is { } dead ? Fine(dead) : Unknown(rest, Parts, "part");
        }

        private FaultReading Lost()
        {
            if (One(rest, Parts, "ground").Name is not { } ground)
            {
                return Unknown(rest, Parts, "ground");
            }

            return GroundLeads.Of(_wiring, ground).IsEmpty && !SitsOnSomething(ground)
                ? Stop(text, $"{ground} has no lead of its own back to battery minus", "name a ground stud that has one")
                : Fine(new Fault.Lost(ground));
        }

        private bool SitsOnSomething(string part) => _wiring.Links.Any(l => l.IsJoint && Names.Same(l.Owner, part));

        // Wires, and parts that are grounded by a lead of their own or by what they sit on.
        private ImmutableArray<string> Joints => [.. Wires, .. Parts.Where(p => !GroundLeads.Of(_wiring, p).IsEmpty || SitsOnSomething(p))];

        private ImmutableArray<string> Leaking => [.. _wiring.Parts.Where(p => p.Model.Elements.Any(Compiling.IsContact)).Select(p => p.Name)];

        private FaultReading Ohms(ImmutableArray<string> names, string kind, Func<string, double, Fault> fault)
        {
            foreach (var (name, written) in Cut(rest, names, " "))
            {
                if (Typed.Read(written, Unit.Ohm) is Typed.Quantity { Si: > 0 and < 1e9 } quantity)
                {
                    return Fine(fault(names.First(n => Names.Fold(n) == name), quantity.Si));
                }
            }

            return Cut(rest, names, " ").Any() || names.Any(n => Names.Fold(n) == rest)
                ? Stop(text, "how many ohms it has cannot be read", "write a number above 0 and ohm at the end, as in 0.5 ohm")
                : Unknown(rest.Split(' ') is [.. var words, _, _] ? string.Join(' ', words) : rest, names, kind);
        }

        private FaultReading Stuck()
        {
            var all = loom.Parts.SelectMany(Moving.Of).ToList();
            foreach (var (name, at) in Cut(rest, all.Select(m => m.Name).Distinct(Names.Comparer), " at "))
            {
                foreach (var moving in all.Where(m => Names.Fold(m.Name) == name))
                {
                    if (moving.Positions.FirstOrDefault(p => Names.Fold(p) == at) is { } position)
                    {
                        return Fine(new Fault.Stuck(moving.Name, position));
                    }
                }

                return Stop(text, $"{name} has no position {at}", $"write one of {string.Join(", ", all.Where(m => Names.Fold(m.Name) == name).SelectMany(m => m.Positions))}");
            }

            return Unknown(rest.Split(" at ")[0], all.Select(m => m.Name), "switch");
        }

        private FaultReading Setting()
        {
            foreach (var (folded, after) in Cut(rest, Parts, " "))
            {
                var part = loom.Parts.First(p => Names.Fold(p.Name) == folded);
                foreach (var (key, value) in Cut(after, OtherSetting.KeysOf(part), " "))
                {
                    // As typed: capitals may matter in a value.
                    var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^value.Split(' ').Length..];
                    var written = string.Join(' ', words);
                    return OtherSetting.In(part, key, written) is null
                        ? Stop(text, $"{written} cannot be {key} of {part.Name}", "write a value as the file would have it")
                        : Fine(new Fault.Setting(part.Name, OtherSetting.KeysOf(part).First(k => Names.Fold(k) == key), written));
                }

                return Unknown(after, OtherSetting.KeysOf(part), $"setting of {part.Name}");
            }

            return Unknown(rest, Parts, "part");
        }

        private FaultReading Reversed()
        {
            if (One(rest, Parts, "part").Name is not { } part)
            {
                return Unknown(rest, Parts, "part");
            }

            return _wiring.Parts.First(p => p.Name == part).Model.Polarity is null
                ? Stop(text, $"{part} works either way round", "name a part with a plus and a minus")
                : Fine(new Fault.Reversed(part));
        }

        private FaultReading Ends(string ends, string between)
        {
            var at = ends.IndexOf(between, StringComparison.Ordinal);
            if (at < 0)
            {
                return Stop(text, $"two terminals are needed, with{between}between them", $"write one of {Forms}");
            }

            var names = Terminals.Select(t => t.ToString());
            return Terminal(ends[..at]) is null ? Unknown(ends[..at], names, "terminal") : Unknown(ends[(at + between.Length)..], names, "terminal");
        }

        private TerminalRef? Terminal(string folded)
        {
            foreach (var terminal in Terminals)
            {
                if (Names.Fold(terminal.ToString()) == folded)
                {
                    return terminal;
                }
            }

            return null;
        }

        // Every declared name the text starts with, the longest first, and what stands after the word between.
        private static IEnumerable<(string Name, string After)> Cut(string folded, IEnumerable<string> names, string between) =>
            from name in names.Select(Names.Fold).OrderByDescending(n => n.Length)
            where folded.StartsWith(name + between, StringComparison.Ordinal)
            select (name, folded[(name.Length + between.Length)..]);
    }
}

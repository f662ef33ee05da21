using System.Collections.Immutable;
using System.Globalization;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Reads the wires: names, ends, size, colour and length, given or worked out.</summary>
internal sealed class WiresReader(PartsRead parts, Ways ways, Found found, Places places)
{
    private readonly HashSet<string> _taken = new(Names.Comparer);

    public ImmutableArray<Wire> Read(Node? node)
    {
        var read = Sections.List(node, "wires", found).Select((node, item) => (Node: node, Item: item, Wire: One(node))).Where(r => r.Wire is not null).ToList();
        var wires = ImmutableArray.CreateBuilder<Wire>();
        foreach (var (told, item, wire) in read)
        {
            var named = wire!.Name.Length > 0 ? wire : wire with { Name = Derive(wire.From, wire.To), NameIsDerived = true };
            places.Remember(named, item, ((told as Node.Map)?.Find("name")?.Value ?? told).Span);
            wires.Add(named);
        }

        return wires.ToImmutable();
    }

    private Wire? One(Node item)
    {
        var settings = FormReader.Keys(item, Grammar.Wire, "this wire", found);
        var map = item as Node.Map;
        var name = Name(map);
        var (first, second) = (End(map, "from"), End(map, "to"));
        if (first is not { } from || second is not { } to)
        {
            return null;
        }

        if (from == to)
        {
            found.Look(
                "wire-to-itself",
                item.Span with { Length = Math.Min(item.Span.Length, 40) },
                "this wire begins and ends at {terminal}",
                "it joins nothing",
                "correct one of its ends",
                Evidence.Of("terminal", from));
        }

        // A length that was written but cannot be read is already told.
        var told = map?.Find("length") is null ? found : new Found();
        var (length, derived) = settings.Number("length") is { } metres ? (new Length(metres), false) : (WorkOut(from, to, item.Span, told), true);
        var ends = settings.Group("ends");
        return new Wire(
            name ?? "",
            from,
            to,
            new CrossSection(settings.Number("size") ?? 0.75),
            Colour(map),
            length,
            ends.Word("from"),
            ends.Word("to")) { LengthIsDerived = derived };
    }

    private string? Name(Node.Map? map)
    {
        if (map?.Find("name")?.Value is not Node.Scalar { IsEmpty: false } word || !OwnerName.Check(word, found))
        {
            return null;
        }

        var name = word.Text.Trim();
        if (_taken.Add(name))
        {
            return name;
        }

        found.Stop(
            "wire-name-twice",
            word.Span,
            "another wire is already called “{name}”",
            "labels, records and photos hang on the name",
            "give each its own, or leave the name out",
            Evidence.Of("name", name));
        return null;
    }

    private TerminalRef? End(Node.Map? map, string key) =>
        map?.Find(key)?.Value is Node.Scalar { IsEmpty: false } word ? TerminalReader.Read(word, parts, found) : null;

    private WireColour? Colour(Node.Map? map)
    {
        if (map?.Find("colour")?.Value is not Node.Scalar { IsEmpty: false } word)
        {
            return null;
        }

        if (WireColours.Read(word.Text) is not { } colour)
        {
            found.Stop(
                "unknown-colour",
                word.Span,
                "“{colour}” is not a colour code",
                "base and tracer are written in two letters each, GN/WH for green with a white tracer",
                "write {cure}",
                Evidence.Of("colour", NodeReader.Short(word.Text)),
                Evidence.Of("cure", WireColours.Suggest(NodeReader.Short(word.Text))));
            return null;
        }

        if (WireColours.CouldBeMisread(word.Text) is { } taken)
        {
            found.Note(
                "colour-could-be-misread",
                word.Span,
                "“{code}” is read as {taken}, not as {not}",
                "these are the older German letters, where {code} is short for {taken}",
                "write {clear} if that is what you have",
                Evidence.Of("code", taken.Code),
                Evidence.Of("taken", taken.Taken),
                Evidence.Of("not", taken.Not),
                Evidence.Of("clear", colour));
        }

        return colour;
    }

    private string Derive(TerminalRef from, TerminalRef to)
    {
        var plain = $"{OwnerName.From(from)} to {OwnerName.From(to)}";
        var name = plain;
        for (var n = 2; !_taken.Add(name); n++)
        {
            name = string.Create(CultureInfo.InvariantCulture, $"{plain} ({n})");
        }

        return name;
    }

    private Length WorkOut(TerminalRef from, TerminalRef to, Span at, Found told)
    {
        var a = parts.Find(from.Part)?.Part?.Place;
        var b = parts.Find(to.Part)?.Part?.Place;
        var head = at with { Length = Math.Min(at.Length, 40) };
        var way = a is null || b is null ? null : Names.Same(a, b) ? Ways.Inside : ways.Between(a, b);
        if (way is null)
        {
            var taken = new Length(1);
            told.Look(
                "length-unknown",
                head,
                "the wire from {from} to {to} has no length, and none can be worked out; {taken} is taken",
                "its resistance and how much to buy hang on it",
                "add a length, or give both parts a place and the places a distance",
                Evidence.Of("from", from),
                Evidence.Of("to", to),
                Evidence.Of("taken", taken));
            return taken;
        }

        var inside = Names.Same(a!, b!);
        var length = inside ? way.Value : new Length(way.Value.Metres * (1 + Ways.Spare));
        told.Note(
            "length-worked-out",
            head,
            inside ? "the wire from {from} to {to} stays in “{place}” and is taken as {length}" : "the wire from {from} to {to} is taken as {length}: the way from “{place}” to “{other}” and {spare} more",
            "a length from the distances is good for planning, not for cutting",
            "measure it on the bike and add “length”",
            Evidence.Of("from", from),
            Evidence.Of("to", to),
            Evidence.Of("place", a!),
            Evidence.Of("other", b!),
            Evidence.Of("length", length),
            Evidence.Of("spare", "10 %"));
        return length;
    }
}

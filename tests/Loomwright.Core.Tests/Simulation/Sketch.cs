using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Quantities;
using Loomwright.Simulation;

namespace Loomwright.Tests.Simulation;

/// <summary>Builds small looms in code, and asks frames plain questions.</summary>
internal sealed class Sketch
{
    private readonly ImmutableArray<Part>.Builder _parts = ImmutableArray.CreateBuilder<Part>();
    private readonly ImmutableArray<Wire>.Builder _wires = ImmutableArray.CreateBuilder<Wire>();
    private readonly ImmutableArray<Function>.Builder _functions = ImmutableArray.CreateBuilder<Function>();

    public Loom Loom => new() { Name = "bench", Parts = _parts.ToImmutable(), Wires = _wires.ToImmutable(), Functions = _functions.ToImmutable() };

    public static Operation Set(string control, string position) => new Operation.Set(control, position);

    public static Operation Tap(string control) => new Operation.Tap(control);

    public static Operation Wait(double seconds) => new Operation.Wait(TimeSpan.FromSeconds(seconds));

    public static TerminalRef At(string terminal)
    {
        var dot = terminal.IndexOf('.', StringComparison.Ordinal);
        return dot < 0 ? new TerminalRef(terminal, "") : new TerminalRef(terminal[..dot], terminal[(dot + 1)..]);
    }

    /// <summary>Settings from pairs: a number, a word, names, or settings of their own.</summary>
    public static Settings Of(params (string Key, object Value)[] entries) => new([.. entries.Select(e => KeyValuePair.Create(e.Key, Value(e.Value)))]);

    public static Value Marks(params string[] names) => new Value.Words([.. names]);

    public static Value Pairs(params (string A, string B)[] joined) => new Value.Pairs([.. joined]);

    public Sketch Part(string name, string kind, params (string Key, object Value)[] settings)
    {
        _parts.Add(new Part(name, kind, null, Of(settings)));
        return this;
    }

    public Sketch Battery(double volts = 12.6, double ohms = 0.015) => Part("battery", "battery", ("chemistry", "agm"), ("rest voltage", volts), ("resistance", ohms));

    public Sketch Wire(string from, string to, string? name = null, double metres = 0.5, double squareMillimetres = 1.5)
    {
        _wires.Add(new Wire(name ?? $"{from} to {to}", At(from), At(to), new CrossSection(squareMillimetres), null, new Length(metres), null, null));
        return this;
    }

    /// <summary>Wires in a chain: battery.+ fuse.1, fuse.2 lamp.+, …</summary>
    public Sketch Wires(params (string From, string To)[] ends) => ends.Aggregate(this, (bench, e) => bench.Wire(e.From, e.To));

    public Sketch Function(string name, string works, string what, string symbol, params string[] controls)
    {
        var expression = Loomwright.Expressions.ExpressionText.Read(works, [.. controls], c => c == "lock" ? ["off", "riding", "park"] : ["released", "pressed"]).Expression!;
        _functions.Add(new Function(name, expression, [new Show(what, symbol)], []));
        return this;
    }

    /// <summary>A box: key on X1, inputs Z1 and Z2 to ground, outputs X4 and X5, a light at each. Of a key given twice the first counts.</summary>
    public Sketch Box(string awake = "key", double limitAmps = 15, params (string Key, object Value)[] more) => Box(
        [("first out", Of(("terminal", "X4"), ("when", "first"), ("limit", limitAmps))), ("second out", Of(("terminal", "X5"), ("when", "second"), ("limit", limitAmps)))], awake, more);

    public Sketch Box((string Key, object Value)[] outputs, string awake = "key", params (string Key, object Value)[] more)
    {
        return Part("box", "load controller",
        [
            ("plugs", Of(("P", Marks("B+", "B-")), ("X", Marks("X1", "X2", "X3", "X4", "X5", "X6")), ("Z", Marks("Z1", "Z2", "Z3")))),
            ("supply", "B+"), ("ground", "B-"), ("awake", awake),
            ("inputs", Of(
                ("key", Of(("terminal", "X1"), ("active", "plus"))),
                ("first", Of(("terminal", "Z1"), ("active", "ground"))),
                ("second", Of(("terminal", "Z2"), ("active", "ground"))))),
            ("outputs", Of(outputs)),
            .. more,
            ("lights", Of([("X1", "input"), ("Z1", "input"), ("Z2", "input"), .. outputs.Select(o => (((Settings)o.Value).Word("terminal")!, (object)"command"))])),
        ]);
    }

    /// <summary>The box on a supply of that name through a fuse, with a ground bar, a lock that joins a and b when riding, and two buttons.</summary>
    public Sketch BoxWired(string supply = "battery")
    {
        return Part("main fuse", "fuse", ("rating", 20.0))
            .Part("lock", "switch", ("terminals", Marks("a", "b")), ("positions", Of(("off", Pairs()), ("riding", Pairs(("a", "b"))))))
            .Part("first button", "button").Part("second button", "button").Part("ground bar", "ground stud")
            .Wires(
                ($"{supply}.+", "main fuse.1"), ("main fuse.2", "box.B+"), ("box.B-", "ground bar"), ("ground bar", $"{supply}.-"),
                ("main fuse.2", "lock.a"), ("lock.b", "box.X1"),
                ("first button.1", "box.Z1"), ("first button.2", "ground bar"), ("second button.1", "box.Z2"), ("second button.2", "ground bar"));
    }

    private static Value Value(object value) => value switch
    {
        Value v => v,
        double n => new Value.Number(n),
        string w => new Value.Word(w),
        Settings s => new Value.Group(s),
        _ => throw new ArgumentException("not a setting", nameof(value)),
    };
}

internal static class Ask
{
    public static Seen Seen(this Frame frame, string name) => frame.Seen.Single(s => s.Name == name);

    public static Symbol Symbol(this Frame frame, string name) => frame.Seen(name).Symbol;

    public static FuseState Fuse(this Frame frame, string name) => frame.Fuses.Single(f => f.Part == name).State;

    public static Symbol Light(this Frame frame, string terminal) => frame.Controllers.Single().Lights.Single(l => l.Terminal == terminal).Symbol;

    public static OutputSeen Output(this Frame frame, string terminal) => frame.Controllers.Single().Outputs.Single(o => o.Terminal == terminal);

    public static double Volts(this Frame frame, string terminal, int phase = 0) => frame.Phases[phase].Potentials.Single(p => p.Terminal == Sketch.At(terminal)).Potential.Volts;

    public static bool Floats(this Frame frame, string terminal) => frame.Phases[0].Potentials.Single(p => p.Terminal == Sketch.At(terminal)).Floats;

    public static double Amps(this Frame frame, string wire) => frame.Phases[0].Wires.Single(w => w.Wire == wire).Current.Amps;
}

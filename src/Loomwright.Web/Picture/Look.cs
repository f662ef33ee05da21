using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Simulation;
using Loomwright.Web.Try;

namespace Loomwright.Web.Picture;

/// <summary>How one moment looks in the picture: each wire's thickness and numbers, each part's word, each light on a case.</summary>
internal sealed record Look(ImmutableDictionary<string, WireLook> Wires, ImmutableDictionary<string, PartLook> Parts, ImmutableDictionary<TerminalRef, LightLook> Lights)
{
    public static Look None { get; } = new(ImmutableDictionary<string, WireLook>.Empty, ImmutableDictionary<string, PartLook>.Empty, ImmutableDictionary<TerminalRef, LightLook>.Empty);

    /// <param name="view">The moment.</param>
    /// <param name="touched">Names of the wires a mistake sits on.</param>
    /// <param name="controls">By part, the names of the controls on it.</param>
    public static Look Of(Shown view, IReadOnlyCollection<string> touched, ILookup<string, string> controls) => new(
        view.Loom.Wires.Select(w => Wire(view, w, touched.Contains(w.Name))).ToImmutableDictionary(w => w.Wire, StringComparer.Ordinal),
        view.Loom.Parts.Select(p => PartLook.Of(view, p.Name, controls[p.Name])).ToImmutableDictionary(p => p.Part, StringComparer.Ordinal),
        view.Now.Controllers.SelectMany(box => box.Lights.Select(l => Light(box, l, view.Before(box)))).ToImmutableDictionary(l => new TerminalRef(l.Part, l.Terminal)));

    /// <summary>What is to be redrawn when this follows another.</summary>
    public Told Since(Look before) => new(
        [.. Wires.Values.Where(w => before.Wires.GetValueOrDefault(w.Wire) != w)],
        [.. Parts.Values.Where(p => before.Parts.GetValueOrDefault(p.Part) != p)],
        [.. Lights.Where(l => before.Lights.GetValueOrDefault(l.Key) != l.Value).Select(l => l.Value)]);

    private static WireLook Wire(Shown view, Wire wire, bool touched)
    {
        var sits = view.Sits(wire) ?? wire;
        var (from, to, now, was) = (view.At(sits.From), view.At(sits.To), view.Of(wire.Name), view.Before(wire.Name));
        var amps = now is null ? "?" : Flow.Text(now.Current);
        return new(wire.Name, Thickness(now?.Current.Amps, from?.Potential.Volts), Volts(from), Volts(to), amps, was is not null && Flow.Text(was.Current) != amps, touched);
    }

    private static LightLook Light(ControllerSeen box, StatusSeen now, ControllerSeen? before) => new(
        box.Part, now.Terminal, Says.LightPicture(now.Symbol), Words.OfLight(now.Symbol), before?.Lights.FirstOrDefault(l => l.Terminal == now.Terminal) is { } was && was.Symbol != now.Symbol);

    private static string Volts(PotentialSeen? seen) => seen is null ? "?" : seen.Floats ? "open" : seen.Potential.ToString();

    // A hand meter's last digit parts "nothing" from "something"; a wire of a lamp and one of a motor are told apart.
    private static int Thickness(double? amps, double? volts) => Math.Abs(amps ?? 0) switch
    {
        >= 4 => 4,
        >= 0.1 => 3,
        >= 0.0005 => 2,
        _ => Math.Abs(volts ?? 0) >= 0.5 ? 1 : 0,
    };
}

/// <summary>A wire in the picture.</summary>
/// <param name="Wire">Its name.</param>
/// <param name="Flow">0 dead, 1 volts without amps, 2 up to 0.1 A, 3 up to 4 A, 4 more.</param>
/// <param name="From">Volts at its first end.</param>
/// <param name="To">Volts at its second end.</param>
/// <param name="Differs">Carries something else than in the healthy bike.</param>
/// <param name="Touched">The mistake sits on it.</param>
internal sealed record WireLook(string Wire, int Flow, string From, string To, string Amps, bool Differs, bool Touched);

/// <summary>The small light beside a terminal of a box.</summary>
/// <param name="Is">light-off, light-on or light-flashing.</param>
/// <param name="Says">The same in words.</param>
/// <param name="Differs">Does something else than in the healthy bike.</param>
internal sealed record LightLook(string Part, string Terminal, string Is, string Says, bool Differs);

/// <summary>What has changed in the picture.</summary>
internal sealed record Told(ImmutableArray<WireLook> Wires, ImmutableArray<PartLook> Parts, ImmutableArray<LightLook> Lights)
{
    public bool IsEmpty => Wires.IsEmpty && Parts.IsEmpty && Lights.IsEmpty;
}

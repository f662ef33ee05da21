using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>An accessory socket, with or without something in it (docs/models/socket.md).</summary>
internal static class SocketKind
{
    private const double RatedVolts = 12;
    private const double WorksAboveShare = 0.5;

    private static readonly Amount Takes = new("takes", "What is plugged in takes at 12 V. Left out: nothing is plugged in.", Unit.Amp, 0.001, 30);

    public static Kind Kind { get; } = Mount.Able(new(
        "socket", "An accessory socket and what is plugged into it.", [Takes.Parameter, Marks.TwoParameter("terminals", "+", "-")], Build));

    private static Model Build(Part part)
    {
        var marks = Marks.Two(part.Settings, "terminals", "+", "-");
        var empty = new Model
        {
            Terminals = [new Terminal(marks.Known[0], Role.Plus), new Terminal(marks.Known[1], Role.Minus)],
            Problems = marks.Problems,
        };
        return Takes.Given(part.Settings) is not { } amps ? empty : empty with
        {
            Elements = [new Element("what is in it", marks.Known[0], marks.Known[1], new Ohms(RatedVolts / amps))],
            Sights = [new Sight.Load("", "what is in it", amps * WorksAboveShare)],
        };
    }
}

using Loomwright.Design;
using Loomwright.Quantities;

namespace Loomwright.Parts;

/// <summary>A fuse (docs/models/fuse.md).</summary>
internal static class FuseKind
{
    // Drop at rated current over a blade fuse: 0.08–0.15 V, from memory.
    private const double RatedDropVolts = 0.1;

    private static readonly Amount Rating = new("rating", "Amps printed on it.", Unit.Amp, 0.5, 500);

    private static readonly Pick Form = new("form", "How it is made: a blade that is pushed in, or a strip bolted down for high currents.", [FuseBand.Blade.Name, FuseBand.BoltDown.Name]);

    public static Kind Kind { get; } = new(
        "fuse", "A fuse: opens for good when it carries too much for too long.", [Rating.Parameter with { Required = true }, Form.Parameter, Marks.TwoParameter("terminals", "1", "2")], Build);

    private static WrongSetting Other(double ratingAmps) => new(Rating.Key, FormattableString.Invariant($"{ratingAmps:0.###} A"), WrongSetting.Chosen);

    private static Model Build(Part part)
    {
        var marks = Marks.Two(part.Settings, "terminals", "1", "2");
        var ratingAmps = Rating.Of(part.Settings);
        return new Model
        {
            Terminals = [.. marks.Known.Select(m => new Terminal(m, Role.Lead))],
            Elements = [new Element("strip", marks.Known[0], marks.Known[1], new Ohms(RatedDropVolts / ratingAmps))],
            Protectors = [new Protector("strip", ratingAmps) { Band = Form.Of(part.Settings) == FuseBand.BoltDown.Name ? FuseBand.BoltDown : FuseBand.Blade }],
            Problems = marks.Problems,
            DeadBy = "fuse missing",
            WrongSettings = [Other(Math.Max(ratingAmps / 2, Rating.Least)), Other(Math.Min(ratingAmps * 2, Rating.Most))],
        };
    }
}

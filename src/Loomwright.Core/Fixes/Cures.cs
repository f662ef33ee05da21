using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Loomwright.Checks;
using Loomwright.Findings;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Fixes;

/// <summary>Which findings have a cure, and all the fixes of a design.</summary>
internal static class Cures
{
    private static readonly Dictionary<string, Func<Pen, Finding, IEnumerable<Cure>>> ByCode = new(StringComparer.Ordinal)
    {
        ["polarised-part-reversed"] = Exchange.Of,
        ["fuse-above-wire"] = FuseAndWire.Of,
        ["branch-behind-larger-fuse"] = FuseAndWire.Of,
        ["no-way-back"] = GroundWire.Of,
        ["kill-switch-wrong-sense"] = KillSense.Of,
        ["brake-lights-nothing"] = SecondBrake.Of,
        ["flash-rate"] = BoxRules.BlinkRate,
        ["hazard-needs-key"] = BoxRules.Wake,
        ["stop-lamp-flashes"] = BoxRules.Steady,
        ["live-unused-lead"] = Cap.Of,
    };

    /// <summary>Every fix that is offered, in the order of the findings. None for a file of which a part could not be read.</summary>
    public static ImmutableArray<Fix> Of(Study study, DesignFile file, ImmutableArray<Finding> findings)
    {
        if (!file.IsComplete)
        {
            return [];
        }

        var pen = new Pen(study, file, findings);
        var taken = new HashSet<string>(StringComparer.Ordinal);
        return
        [
            .. from finding in findings
               where ByCode.ContainsKey(finding.Code)
               from cure in ByCode[finding.Code](pen, finding)
               where !cure.Edits.IsEmpty
               select new Fix(Unique(Slug($"{cure.Verb} {cure.About}"), taken), cure.Title, finding, cure.Edits),
        ];
    }

    private static string Unique(string id, HashSet<string> taken)
    {
        var unique = id;
        for (var n = 2; !taken.Add(unique); n++)
        {
            unique = string.Create(CultureInfo.InvariantCulture, $"{id}-{n}");
        }

        return unique;
    }

    // Letters and digits of any alphabet; whatever a shell would take for more becomes a dash.
    private static string Slug(string words)
    {
        var slug = new StringBuilder();
        foreach (var c in Names.Fold(words))
        {
            if (char.IsLetterOrDigit(c))
            {
                slug.Append(c);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        return slug.ToString().TrimEnd('-');
    }
}

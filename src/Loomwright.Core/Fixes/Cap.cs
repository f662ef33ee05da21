using Loomwright.Findings;

namespace Loomwright.Fixes;

/// <summary>A lead that goes nowhere and can be live: written down as spare and capped, unless something else is wrong that a wire on it could cure.</summary>
internal static class Cap
{
    public static IEnumerable<Cure> Of(Pen pen, Finding finding)
    {
        if (finding.Where is Subject.OfTerminal { Terminal: var lead } && pen.Findings.All(f => f.Severity < Severity.Look || f.Code == finding.Code))
        {
            yield return new Cure("cap", lead.ToString(), $"Write that {lead} is spare and capped", [pen.Unused(lead)]);
        }
    }
}

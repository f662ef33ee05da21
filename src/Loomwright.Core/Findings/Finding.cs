using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Findings;

/// <summary>How much it matters. A common practice is never more than a note.</summary>
public enum Severity
{
    /// <summary>Common practice worth knowing.</summary>
    Note,

    /// <summary>Likely wrong.</summary>
    Look,

    /// <summary>Harm, or no answer possible.</summary>
    Stop,
}

/// <summary>What a finding is about. The bike turns it into a place in the file.</summary>
public abstract record Subject
{
    private Subject()
    {
    }

    /// <summary>The file as a whole.</summary>
    public sealed record Whole : Subject;

    /// <summary>A stretch of the file.</summary>
    public sealed record Stretch(Span Span) : Subject;

    /// <summary>A part.</summary>
    public sealed record OfPart(string Part) : Subject;

    /// <summary>A terminal of a part.</summary>
    public sealed record OfTerminal(TerminalRef Terminal) : Subject;

    /// <summary>A wire.</summary>
    public sealed record OfWire(string Wire) : Subject;

    /// <summary>One of the conditions.</summary>
    public sealed record OfCondition(string Key) : Subject;

    /// <summary>A function.</summary>
    public sealed record OfFunction(string Function) : Subject;
}

/// <summary>One named fact a finding rests on; its value is already text with its unit.</summary>
public sealed record Evidence(string Name, string Value)
{
    public static Evidence Of(string name, object value) => new(name, value.ToString() ?? "");
}

/// <summary>
/// Something to tell the owner. <c>What</c>, <c>Why</c> and <c>Do</c> are templates: every number and every name of the
/// owner's stands in braces and comes from the evidence, so text and figures cannot disagree.
/// </summary>
/// <param name="Code">A slug in plain words, never reused.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Where">What it is about.</param>
/// <param name="WhatTemplate">What is seen.</param>
/// <param name="WhyTemplate">Why it matters.</param>
/// <param name="DoTemplate">What to do, cheapest first.</param>
/// <param name="Evidence">The facts, in the order shown.</param>
public sealed record Finding(
    string Code,
    Severity Severity,
    Subject Where,
    string WhatTemplate,
    string WhyTemplate,
    string DoTemplate,
    ImmutableArray<Evidence> Evidence)
{
    public string What => Render(WhatTemplate);

    public string Why => Render(WhyTemplate);

    public string Do => Render(DoTemplate);

    private string Render(string template)
    {
        var text = template;
        foreach (var fact in Evidence)
        {
            text = text.Replace("{" + fact.Name + "}", fact.Value, StringComparison.Ordinal);
        }

        return text;
    }

    public bool Equals(Finding? other) => other is not null && Code == other.Code && Severity == other.Severity && Where == other.Where
        && What == other.What && Why == other.Why && Do == other.Do && Evidence.SequenceEqual(other.Evidence);

    public override int GetHashCode() => HashCode.Combine(Code, Where);
}

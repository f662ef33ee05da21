using System.ComponentModel;
using Loomwright.Findings;

namespace Loomwright.Answers;

/// <summary>What <c>explain</c> answers.</summary>
public sealed class ExplainAnswer(Page page) : Answer("explain", null)
{
    public string Code { get; } = page.Code;

    [Description("The whole page, Markdown.")]
    public string Page { get; } = page.Text;
}

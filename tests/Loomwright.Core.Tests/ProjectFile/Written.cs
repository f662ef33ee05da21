using System.Text;
using Loomwright.Findings;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.ProjectFile;

/// <summary>Shows trees and findings as text for the tests.</summary>
internal static class Written
{
    public static SourceText Text(string content) => new("bike.loom.yaml", content);

    public static Tree Tree(string content) => Loomwright.ProjectFile.Tree.Read(Text(content));

    public static DesignFile File(string content) => DesignFile.Read(Text(content));

    /// <summary>A tree in one line: <c>{a: b, c: [d]}</c>.</summary>
    public static string Shown(Node node) => node switch
    {
        Node.Scalar s => s.Text,
        Node.List l => "[" + string.Join(", ", l.Items.Select(Shown)) + "]",
        Node.Map m => "{" + string.Join(", ", m.Entries.Select(e => e.Key.Text + ": " + Shown(e.Value))) + "}",
        _ => "?",
    };

    /// <summary>Findings one below the other, with their place and every sentence.</summary>
    public static string Shown(SourceText text, IEnumerable<Finding> findings)
    {
        var shown = new StringBuilder();
        foreach (var finding in findings)
        {
            var at = text.At(((Subject.Stretch)finding.Where).Span.Start);
            shown.Append(at).Append(' ').Append(finding.Severity.ToString().ToLowerInvariant()).Append(' ').Append(finding.Code).Append('\n');
            shown.Append("  ").Append(finding.What).Append('\n');
            shown.Append("  why: ").Append(finding.Why).Append('\n');
            shown.Append("  do: ").Append(finding.Do).Append('\n');
        }

        return shown.ToString();
    }

    /// <summary>Codes with their places: <c>said-twice 3:1</c>.</summary>
    public static string[] Codes(SourceText text, IEnumerable<Finding> findings) =>
        [.. findings.Select(f => $"{f.Code} {text.At(((Subject.Stretch)f.Where).Span.Start)}")];
}

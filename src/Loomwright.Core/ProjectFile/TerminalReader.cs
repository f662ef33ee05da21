using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Text;

namespace Loomwright.ProjectFile;

/// <summary>Reads <c>part.terminal</c>, or a part alone when it is one point.</summary>
internal static class TerminalReader
{
    /// <summary>The terminal in the owner's spelling of the parts section, or null: then it was reported, or its part was.</summary>
    public static TerminalRef? Read(Node.Scalar word, PartsRead parts, Found found)
    {
        var written = word.Text.Trim();
        var dot = written.IndexOf('.', StringComparison.Ordinal);
        var (name, mark) = dot < 0 ? (written, "") : (written[..dot].Trim(), written[(dot + 1)..].Trim());
        if (parts.Find(name) is not { } part)
        {
            if (parts.IsPartial)
            {
                return null;
            }

            found.Stop(
                "unknown-part",
                word.Span,
                "“{part}” is not among the parts",
                "a wire ends on a terminal of a part",
                "{cure} Otherwise add it under “parts”",
                Evidence.Of("part", NodeReader.Short(name)),
                Evidence.Of("cure", Suggestion.For(name, [.. parts.All.Select(p => p.Name)])));
            return null;
        }

        if (part.Model is not { } model)
        {
            return null;
        }

        if (model.Terminals.FirstOrDefault(t => Names.Same(t.Mark, mark)) is { } terminal)
        {
            return new TerminalRef(part.Name, terminal.Mark);
        }

        if (model.Terminals is [{ Mark.Length: 0 }])
        {
            found.Stop(
                "no-terminals-here",
                word.Span,
                "“{part}” is a single point and has no terminal “{mark}”",
                "all wires on it meet in one place",
                "write “{part}” alone",
                Evidence.Of("part", part.Name),
                Evidence.Of("mark", NodeReader.Short(mark)));
            return null;
        }

        if (model.Terminals.IsEmpty)
        {
            // What is wrong with the part's own settings is already told.
            return null;
        }

        var marks = model.Terminals.Select(t => t.Mark).ToList();
        found.Stop(
            mark.Length == 0 ? "terminal-missing" : "unknown-terminal",
            word.Span,
            mark.Length == 0 ? "“{part}” has several terminals and none is named here" : "“{part}” has no terminal “{mark}”",
            "its terminals are: {marks}",
            mark.Length == 0 ? "write the part, a dot and the terminal" : "{cure}",
            Evidence.Of("part", part.Name),
            Evidence.Of("mark", NodeReader.Short(mark)),
            Evidence.Of("marks", string.Join(", ", marks)),
            Evidence.Of("cure", Suggestion.For(mark, marks)));
        return null;
    }
}

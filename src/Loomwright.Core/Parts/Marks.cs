using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>The terminals of one part while its model is built: every mark mentioned must be among them.</summary>
internal sealed class Marks
{
    private readonly ImmutableArray<Problem>.Builder _problems = ImmutableArray.CreateBuilder<Problem>();
    private readonly string _where;

    /// <summary>Takes the marks of a case in their order; one that stands there twice is kept once and is a problem.</summary>
    /// <param name="where">The key they are declared under.</param>
    public Marks(ImmutableArray<string> declared, string where)
    {
        _where = where;
        Known = [.. declared.Distinct(Names.Comparer)];
        foreach (var twice in declared.GroupBy(m => m, Names.Comparer).Where(g => g.Count() > 1))
        {
            Complain(where, $"{twice.Key} stands there {twice.Count()} times", "give every terminal its own mark");
        }
    }

    public ImmutableArray<string> Known { get; }

    public ImmutableArray<Problem> Problems => _problems.ToImmutable();

    public void Complain(string path, string what, string cure) => _problems.Add(new Problem(path, what, cure));

    /// <summary>The mark in the spelling it was declared with, or null and a problem with the nearest one as cure.</summary>
    public string? Find(string mark, string path)
    {
        foreach (var declared in Known)
        {
            if (Names.Same(declared, mark))
            {
                return declared;
            }
        }

        Complain(path, $"there is no {mark} among the {_where}", Cure(mark, Known, $"add {mark} to the {_where}"));
        return null;
    }

    /// <summary>Checks the leads that any part may call unused or give a colour.</summary>
    public void FindLeads(Settings settings)
    {
        foreach (var lead in settings.Words("unused"))
        {
            Find(lead, "unused");
        }

        foreach (var (lead, _) in settings.Group("lead colours").Entries)
        {
            Find(lead, "lead colours");
        }
    }

    /// <summary>What to write instead of a word that is not known.</summary>
    public static string Cure(string word, ImmutableArray<string> known, string otherwise) =>
        Nearest.To(word, known) is { } near ? $"write {near}"
        : known.IsEmpty ? otherwise
        : $"{otherwise}, or write one of {string.Join(", ", known)}";

    /// <summary>What a part with two terminals may say of them.</summary>
    public static Parameter TwoParameter(string key, string first, string second) =>
        new(key, $"The marks of its two terminals, in this order. Default {first} and {second}.", new Form.Names());

    /// <summary>The terminals of a part by the owner's marks, which must be as many as ours, or ours.</summary>
    public static Marks Of(Settings settings, string key, ImmutableArray<string> usual)
    {
        var named = settings.Words(key);
        if (named.Length == usual.Length && named.Distinct(Names.Comparer).Count() == named.Length)
        {
            return new Marks(named, key);
        }

        var marks = new Marks(usual, key);
        if (!named.IsEmpty)
        {
            marks.Complain(key, $"it has {usual.Length} terminals with different marks", $"write {usual.Length}, as in [{string.Join(", ", usual)}]");
        }

        return marks;
    }

    /// <summary>The two terminals of a part, by the owner's marks or ours.</summary>
    public static Marks Two(Settings settings, string key, string first, string second)
    {
        second = Mount.IsIn(settings) ? Mount.Case : second;
        var named = settings.Words(key);
        if (named.Length == 2 && !Names.Same(named[0], named[1]))
        {
            return new Marks(named, key);
        }

        var marks = new Marks([first, second], key);
        if (!named.IsEmpty)
        {
            marks.Complain(key, "it has two terminals with two different marks", $"write two, as in [{first}, {second}]");
        }

        return marks;
    }
}

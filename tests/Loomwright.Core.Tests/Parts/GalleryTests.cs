using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Tests.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.Parts;

/// <summary>The small files under examples/gallery/kinds/, one for a few kinds each.</summary>
public sealed class GalleryTests
{
    private const string Ladder = "examples/gallery/kinds/block-by-ladder.loom.yaml";

    public static TheoryData<string> Files => [.. Under("examples/gallery/kinds")];

    [Theory]
    [MemberData(nameof(Files))]
    public void A_gallery_file_is_read_and_checked_with_notes_at_the_most(string path)
    {
        var bike = Bike.Read(new SourceText(path, Pages.Read(path)));
        Assert.True(bike.IsComplete);
        Assert.Equal("", Written.Shown(bike.Text, bike.ReadingFindings.Where(f => f.Severity > Severity.Note)));
        Assert.Empty(bike.Check().Where(f => f.Severity > Severity.Note).Select(f => f.Code));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_control_of_a_gallery_file_moved_alone_settles_and_blows_nothing(string path)
    {
        var bike = Bike.Read(new SourceText(path, Pages.Read(path)));
        var moves = bike.Controls.SelectMany(c => c.Positions.Select(p => new Operation.Set(c.Name, p)));
        foreach (var frame in moves.Select(move => bike.Start().Do(move)))
        {
            Assert.Equal(Outcome.Settled, frame.Outcome);
            Assert.DoesNotContain(frame.Fuses, f => f.State is FuseState.Blown or FuseState.Cycling);
            Assert.DoesNotContain(frame.Controllers.SelectMany(c => c.Outputs), o => o.State == OutputState.Tripped);
        }
    }

    [Fact]
    public void Two_buttons_of_a_ladder_held_at_once_are_the_only_surprise_of_its_file()
    {
        var surprises = Bike.Read(new SourceText(Ladder, Pages.Read(Ladder))).Walk().Surprises;
        Assert.NotEmpty(surprises);
        Assert.All(surprises, s => Assert.True(s.Steps.Count(step => step.Words.EndsWith("pressed", StringComparison.Ordinal)) >= 2));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_promise_of_a_gallery_file_is_kept_when_its_controls_are_moved(string path)
    {
        var walked = Bike.Read(new SourceText(path, Pages.Read(path))).Walk();
        Assert.True(walked.Complete);
        Assert.Empty(walked.Surprises.Where(_ => path != Ladder).Select(s => $"{s.Kind} {s.Function}: {string.Join("; ", s.Steps)}: {string.Join(", ", s.Parts)}"));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_gallery_file_gets_a_bench_plan_or_is_told_what_it_leaves_open(string path)
    {
        var plan = Bike.Read(new SourceText(path, Pages.Read(path))).Plan();
        Assert.True(plan.Stages.Length + plan.OpenPoints.Length > 0);
    }

    [Fact]
    public void Every_kind_is_used_somewhere_in_the_examples()
    {
        var used = Looms().SelectMany(l => l.Parts).Select(p => p.Kind).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(Kinds.All.Select(k => k.Name).Except(used));
    }

    [Fact]
    public void Every_choice_a_kind_offers_is_made_somewhere_in_the_examples()
    {
        var made = Looms().SelectMany(l => l.Parts).SelectMany(p => Made(Seen(p.Kind), Kinds.Find(p.Kind)!.Parameters, p.Settings)).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(Kinds.All.SelectMany(k => Offered(Seen(k.Name), k.Parameters)).Except(made));
    }

    private static IEnumerable<string> Under(string folder) =>
        Directory.GetFiles(Path.Combine(Pages.Root(), folder), "*.loom.yaml", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Pages.Root(), f).Replace('\\', '/')).Order(StringComparer.Ordinal);

    private static IEnumerable<Loom> Looms() => Under("examples").Select(path => Written.File(Pages.Read(path)).Loom!);

    // A key is one wherever in its kind it stands: what lights may be told of a lamp or of an element.
    private static string At(string at, string key) => $"{at.Split('/')[0]}/{key}";

    // A tell-tale is told like a lamp.
    private static string Seen(string kind) => kind == "tell-tale" ? "lamp" : kind;

    private static IEnumerable<string> Offered(string at, IEnumerable<Parameter> parameters) =>
        parameters.SelectMany(p => Offered(At(at, p.Key), p.Form));

    private static IEnumerable<string> Offered(string at, Form form) => form switch
    {
        Form.Choice choice => choice.Options.Select(o => $"{at}: {o}"),
        Form.Keys keys => Offered(at, keys.Parameters),
        Form.Each each => Offered(at, each.Entry),
        _ => [],
    };

    private static IEnumerable<string> Made(string at, IEnumerable<Parameter> parameters, Settings settings) =>
        parameters.Where(p => settings[p.Key] is not null).SelectMany(p => Made(At(at, p.Key), p.Form, settings[p.Key]!));

    private static IEnumerable<string> Made(string at, Form form, Value value) => (form, value) switch
    {
        (Form.Choice, Value.Word word) => [$"{at}: {word.Text}"],
        (Form.Keys keys, Value.Group group) => Made(at, keys.Parameters, group.Entries),
        (Form.Each each, Value.Group group) => group.Entries.Entries.SelectMany(e => Made(at, each.Entry, e.Value)),
        _ => [],
    };
}

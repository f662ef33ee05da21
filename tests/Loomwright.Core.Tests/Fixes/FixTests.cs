using Loomwright.Findings;
using Loomwright.Fixes;
using Loomwright.Parts;
using Loomwright.ProjectFile;
using Loomwright.Text;

namespace Loomwright.Tests.Fixes;

public class FixTests
{
    private static readonly Lazy<IReadOnlyList<(string Name, Bike Bike)>> Designs = new(() => [.. Texts().Select(t => (t.Name, Bike.Read(new SourceText(t.Name, t.Text))))]);

    /// <summary>Every fix that any gallery file, sample of a page or Sandpiper offers.</summary>
    public static TheoryData<string, string> Offered => [.. Designs.Value.SelectMany(d => d.Bike.Fixes.Select(f => (d.Name, f.Id)))];

    [Theory]
    [MemberData(nameof(Offered))]
    public void After_a_fix_its_finding_is_gone_nothing_new_is_found_and_no_fuse_is_larger(string name, string id)
    {
        var (bike, fix) = Find(name, id);
        var edited = Assert.IsType<EditOutcome.Edited>(bike.Edit(fix.Edits));
        var after = Bike.Read(edited.Text);

        Assert.True(after.IsComplete);
        Assert.DoesNotContain(after.Check(), f => f.Code == fix.For.Code && f.Where == fix.For.Where);
        Assert.Empty(Grave(after).Except(Grave(bike)));
        Assert.All(Ratings(bike), was => Assert.InRange(Ratings(after)[was.Key], 0, was.Value));
        Assert.Null(bike.Try(fix).Objection);
    }

    [Theory]
    [MemberData(nameof(Offered))]
    public void A_fix_keeps_every_comment_and_every_line_it_does_not_name(string name, string id)
    {
        var (bike, fix) = Find(name, id);
        var edited = Assert.IsType<EditOutcome.Edited>(bike.Edit(fix.Edits));
        var changes = bike.Try(fix).Lines;

        Assert.Equal(Comments(bike.Text), Comments(edited.Text));
        var lines = bike.Text.Content.Split('\n').ToList();
        foreach (var change in changes.Reverse())
        {
            Assert.Equal(change.Before, lines.Skip(change.Line - 1).Take(change.Before.Length).Select(l => l.TrimEnd('\r')));
            lines.RemoveRange(change.Line - 1, change.Before.Length);
            lines.InsertRange(change.Line - 1, change.After);
        }

        Assert.Equal(edited.Text.Content.Split('\n'), lines);
    }

    [Theory]
    [InlineData("polarised-part-reversed")]
    [InlineData("fuse-above-wire")]
    [InlineData("branch-behind-larger-fuse")]
    [InlineData("no-way-back")]
    [InlineData("kill-switch-wrong-sense")]
    [InlineData("brake-lights-nothing")]
    [InlineData("flash-rate")]
    [InlineData("hazard-needs-key")]
    [InlineData("stop-lamp-flashes")]
    [InlineData("live-unused-lead")]
    public void A_cure_that_is_certain_enough_is_offered(string code) =>
        Assert.Contains(Designs.Value, d => d.Bike.Fixes.Any(f => f.For.Code == code));

    [Fact]
    public void A_reversed_lamp_is_turned_by_exchanging_its_two_ends_and_nothing_else()
    {
        var (bike, fix) = Find("examples/gallery/lamp-reversed.loom.yaml", "exchange-tail-lamp");
        Assert.Equal("Exchange the wires on tail lamp.+ and tail lamp.-", fix.Title);
        Assert.Equal(
            ["    to: tail lamp.-", "    to: tail lamp.+", "    from: tail lamp.+", "    from: tail lamp.-"],
            bike.Try(fix).Lines.SelectMany(l => l.Before.Concat(l.After)));
    }

    [Fact]
    public void A_fix_that_would_raise_a_fuse_is_refused_whoever_asks_for_it()
    {
        var (bike, fix) = Find("examples/gallery/lamp-reversed.loom.yaml", "exchange-tail-lamp");
        var raised = fix with { Edits = fix.Edits.Add(new Edit.Replace(NodePath.Root.Key("parts").Key("key fuse").Key("rating"), Node.Word("15 A"))) };
        Assert.Contains("a fuse is never raised", bike.Try(raised).Objection, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fix_that_cures_nothing_or_brings_another_finding_is_refused()
    {
        var (bike, fix) = Find("examples/gallery/lamp-reversed.loom.yaml", "exchange-tail-lamp");
        var smaller = new Edit.Replace(NodePath.Root.Key("parts").Key("key fuse").Key("rating"), Node.Word("2 A"));
        Assert.Contains("would stay", bike.Try(fix with { Edits = [smaller] }).Objection, StringComparison.Ordinal);
        var lost = new Edit.Remove(bike.Loom!.Wires.Select((w, i) => (w, i)).Where(x => x.w.Name == "box ground").Select(x => NodePath.Root.Key("wires").Item(x.i)).Single());
        Assert.Contains("would bring another", bike.Try(fix with { Edits = fix.Edits.Add(lost) }).Objection, StringComparison.Ordinal);
    }

    [Fact]
    public void Ids_are_unique_in_a_design_and_need_no_quotes() =>
        Assert.All(Designs.Value, d =>
        {
            Assert.Equal(d.Bike.Fixes.Length, d.Bike.Fixes.Select(f => f.Id).Distinct(StringComparer.Ordinal).Count());
            Assert.All(d.Bike.Fixes, f => Assert.Matches(@"^[\p{L}\p{N}]+(-[\p{L}\p{N}]+)*$", f.Id));
        });

    [Fact]
    public void A_file_that_cannot_be_read_whole_is_offered_no_fix() =>
        Assert.Empty(Bike.Read(new SourceText("x", Repository.Read("examples/gallery/lamp-reversed.loom.yaml") + "nonsense: [\n")).Fixes);

    private static (Bike Bike, Fix Fix) Find(string name, string id)
    {
        var bike = Designs.Value.First(d => d.Name == name).Bike;
        return (bike, bike.Fixes.Single(f => f.Id == id));
    }

    private static HashSet<string> Grave(Bike bike) => [.. bike.Check().Concat(bike.ReadingFindings).Where(f => f.Severity > Severity.Note).Select(f => f.Code + f.What)];

    private static Dictionary<string, double> Ratings(Bike bike) => bike.Loom!.Parts
        .Select(p => (p.Name, Bike.Model(p).Protectors))
        .Where(p => !p.Protectors.IsEmpty)
        .ToDictionary(p => p.Name, p => p.Protectors[0].RatingAmps, StringComparer.Ordinal);

    private static List<string> Comments(SourceText text) => [.. text.Content.Split('\n').Where(l => l.Contains('#', StringComparison.Ordinal)).Select(l => l[l.IndexOf('#', StringComparison.Ordinal)..])];

    private static IEnumerable<(string Name, string Text)> Texts() =>
        Directory.GetFiles(Path.Combine(Repository.Root, "examples/gallery"), "*.loom.yaml", SearchOption.AllDirectories)
            .Append(Path.Combine(Repository.Root, "examples/sandpiper/sandpiper.loom.yaml"))
            .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
            .Order(StringComparer.Ordinal)
            .Select(f => (f, Repository.Read(f)))
            .Concat(Page.All.Where(p => p.Text.Contains("```yaml", StringComparison.Ordinal)).Select(p => (p.Code, p.Text.Split("```yaml\n")[1].Split("```")[0])));
}

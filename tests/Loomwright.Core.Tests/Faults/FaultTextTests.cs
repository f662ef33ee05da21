using Loomwright.Design;
using Loomwright.Faults;
using Loomwright.Tests.Simulation;

namespace Loomwright.Tests.Faults;

public class FaultTextTests
{
    [Theory]
    [InlineData("open: FIRST BUTTON.1  to box.Z1", "open: first button.1 to box.Z1")]
    [InlineData(" Lost:  Tail Stud ", "lost: tail stud")]
    [InlineData("short: box.x4 to LAMP.-", "short: box.X4 to lamp.-")]
    [InlineData("SWAPPED: box.X4 with box.X5", "swapped: box.X4 with box.X5")]
    [InlineData("moved: box.X4 to lamp.+ end lamp.+ to lamp.-", "moved: box.X4 to lamp.+ end lamp.+ to lamp.-")]
    public void Case_and_blanks_do_not_matter_and_the_owners_spelling_comes_back(string typed, string id) =>
        Assert.Equal(id, FaultText.Read(typed, FaultTests.Sample).Fault?.ToString());

    public static TheoryData<string> OnThePage => [.. Pages.Table("docs/faults.md", "Forms").Select(row => row[1])];

    [Theory]
    [MemberData(nameof(OnThePage))]
    public void Every_example_on_the_page_reads_on_the_bench_it_names(string id) =>
        Assert.Equal(id, FaultText.Read(id, KittiwakeBenchTests.Healthy).Fault?.ToString());

    [Fact]
    public void Every_kind_of_fault_is_on_the_page() => 
        Assert.Equal(typeof(Fault).GetNestedTypes().Length, Pages.Table("docs/faults.md", "Forms").Select(row => row[1].Split(':')[0]).Distinct(StringComparer.Ordinal).Count());

    [Fact]
    public void The_longest_declared_name_that_lets_the_rest_be_read_wins()
    {
        var loom = new Sketch().Battery().Part("a", "button").Part("b", "button")
            .Wire("a.1", "b.1", "feed").Wire("a.2", "b.2", "feed end a.1").Loom;

        Assert.Equal(new Fault.Open("feed end a.1"), FaultText.Read("open: feed end a.1", loom).Fault);
        Assert.Equal(new Fault.Moved("feed end a.1", Sketch.At("a.2"), Sketch.At("a.1")), FaultText.Read("moved: feed end a.1 end a.2 to a.1", loom).Fault);
        Assert.Equal(new Fault.Moved("feed", Sketch.At("a.1"), Sketch.At("a.2")), FaultText.Read("moved: feed end a.1 to a.2", loom).Fault);
    }

    [Theory]
    [InlineData("lamp is broken", "a fault starts with what is wrong and a colon", "write one of open: WIRE")]
    [InlineData("broken: lamp", "broken is not a kind of fault", "write one of open: WIRE")]
    [InlineData("open: box.X4 to lamb.+", "no wire is called box.x4 to lamb.+", "write box.X4 to lamp.+")]
    [InlineData("dead: lampp", "no part is called lampp", "write lamp")]
    [InlineData("lost: lamp", "lamp has no lead of its own back to battery minus", "name a ground stud")]
    [InlineData("reversed: lamp", "lamp works either way round", "name a part with a plus and a minus")]
    [InlineData("short: box.X4 box.X5", "two terminals are needed, with to between them", "write one of")]
    [InlineData("short: box.X4 to box.X4", "box.X4 is named twice", "name two terminals")]
    [InlineData("swapped: box.X4 with box.Q5", "no terminal is called box.q5", "write box.X5")]
    [InlineData("moved: box.X4 to lamp.+ end box.X5 to box.X6", "box.X4 to lamp.+ has no end on box.X5", "write its end as box.X4 or lamp.+")]
    [InlineData("moved: box.X4 to lamp.+ end box.X4 to box.X4", "other wires join box.X4 and box.X4 anyway", "name a terminal that is not joined")]
    [InlineData("moved: lamp.- to tail stud end tail stud to ground bar", "other wires join tail stud and ground bar anyway", "name a terminal that is not joined")]
    public void What_cannot_be_read_is_one_clear_problem_with_its_cure(string typed, string what, string cure)
    {
        var problem = FaultText.Read(typed, FaultTests.Sample).Problem!;
        Assert.StartsWith(what, problem.What, StringComparison.Ordinal);
        Assert.StartsWith(cure, problem.Cure, StringComparison.Ordinal);
        Assert.Equal(typed, problem.Path);
    }
}

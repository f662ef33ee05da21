using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Findings;
using Loomwright.Quantities;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Bench;

/// <summary>The staged way from a bare table to everything working on the bench. Made from the design alone; the same design gives the same plan.</summary>
/// <param name="Title">The bike's name and what the plan is for.</param>
/// <param name="Stages">In the order to be done; each stage keeps what the one before connected unless it says to take it out.</param>
/// <param name="OpenPoints">What this plan leaves unshown, and why, in words.</param>
public sealed record Plan(string Title, ImmutableArray<Stage> Stages, ImmutableArray<string> OpenPoints)
{
    /// <summary>What <c>check</c> calls a stop: put right before any power. While there is one, <see cref="Stages"/> is empty.</summary>
    public ImmutableArray<Finding> PutRightFirst { get; init; } = [];

    /// <summary>The whole design as the bench has it: its supply, the lamps that stand in.</summary>
    internal Loom? Whole { get; init; }

    /// <summary>Makes the plan of a design. Stages are empty when something is to be put right first, when there is no supply or nothing on it can be brought on; the open points then say so.</summary>
    public static Plan For(Loom loom, PlanOptions? options = null) => new Planning(loom, options ?? new PlanOptions()).Finish();
}

/// <summary>What the bench has.</summary>
public sealed record PlanOptions
{
    /// <summary>A bench supply at 13.0 V that gives this much, in place of the design's own supply; null: the design's own.</summary>
    public Current? BenchSupplyLimit { get; init; }

    /// <summary>Names of the parts on the table; empty: all of them.</summary>
    public ImmutableArray<string> OnTable { get; init; } = [];

    /// <summary>Only what brings something new: one lamp of each sort, one switch, one flashing output. The rest stands among the open points.</summary>
    public bool OneOfEach { get; init; }
}

/// <summary>One stage: connect a little, expect something, see it, power down.</summary>
/// <param name="Number">From 0.</param>
/// <param name="Title">What is new in it.</param>
/// <param name="Why">Why it comes now.</param>
/// <param name="Draws">Largest supply current over everything the stage operates, computed; see <see cref="DrawsAtMost"/> for what may be read.</param>
/// <param name="FirstFuse">The fuse for first power.</param>
/// <param name="Steps">In order; each <see cref="Step.Act"/> in one run.</param>
/// <param name="Connected">The design of exactly what is connected once this stage stands, stand-ins included; what every expectation was computed from.</param>
public sealed record Stage(int Number, string Title, string Why, Current Draws, FirstFuse FirstFuse, ImmutableArray<Step> Steps, Loom Connected)
{
    /// <summary>The same with every fuse that stays: full power.</summary>
    internal Loom Full { get; init; } = Connected;

    /// <summary>What its steps were written from; null on the bike.</summary>
    internal Site? Site { get; init; }

    /// <summary>Whether it is done on the bench, where no engine is; else on the finished bike.</summary>
    public bool IsOnTheBench => Site is not null;

    /// <summary>What lies on the table for a part: its own name, or what stands in for it.</summary>
    public string Lying(string part) => Site?.StandIns.TryGetValue(part, out var used) == true ? $"{Spoken.Known(used)} in place of {part}" : part;

    /// <summary>What sits in the lead that lies there in place of a key, each so that the part's name follows it: <c>fuse in the lead in place of</c>. Empty elsewhere.</summary>
    public ImmutableArray<string> InLead(string part) => Site is { } site && site.IsKey(part) && site.StandIns.TryGetValue(part, out var used)
        ? [$"fuse in {Spoken.Known(used)} in place of", $"bench switch in {Spoken.Known(used)} in place of"]
        : [];

    /// <summary>Upper end of what a meter may show for <see cref="Draws"/>, in the hundredths it shows; nothing where nothing flows.</summary>
    public Current DrawsAtMost => new(Draws.Amps < 1e-6 ? 0 : Bands.Hundredths(Bands.Of(Draws)).Most!.Value);
}

/// <summary>The smallest standard blade fuse at or above 1.25 × what the stage draws, never above the final one.</summary>
/// <param name="Rating">Printed rating.</param>
/// <param name="BodyColour">Colour of its body.</param>
/// <param name="Final">Rating of the fuse that stays, or null when the design has none there.</param>
public sealed record FirstFuse(Current Rating, string BodyColour, Current? Final)
{
    /// <summary>Whether it is the one that stays, and none for first power only.</summary>
    public bool Stays => Final == Rating;
}

/// <summary>What a step asks for.</summary>
public enum Act
{
    Fetch,
    TakeOut,
    Connect,
    Measure,
    PowerUp,
    Operate,
    PowerDown,
    Again,
}

/// <summary>One act of one hand.</summary>
/// <param name="Id">Stable: <c>s1.connect.2</c>, counted from 1 inside its act.</param>
/// <param name="Text">What to do, with the owner's names and the marks on the case.</param>
public sealed record Step(string Id, Act Act, string Text)
{
    /// <summary>Terminals it touches, in the order named.</summary>
    public ImmutableArray<Mark> Marks { get; init; } = [];

    /// <summary>The part it fetches, or null.</summary>
    public string? Part { get; init; }

    /// <summary>The wire it handles, by its unique name, or null.</summary>
    public string? Wire { get; init; }

    /// <summary>How to set and hold the meter, or null when none is used.</summary>
    public MeterCard? Meter { get; init; }

    /// <summary>What is then to be seen or read, all computed. Shown before the step is done.</summary>
    public ImmutableArray<Expectation> Expect { get; init; } = [];

    /// <summary>What can hurt at this step, short.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>Lamps and the like whose plug is off while it is measured; a cold filament hides a short.</summary>
    public ImmutableArray<string> Unplugged { get; init; } = [];

    /// <summary>Whether power is on while it is done.</summary>
    public bool PowerOn { get; init; }

    /// <summary>
    /// The control that is moved, or null. Doing these in order on <see cref="Stage.Connected"/> gives every
    /// <see cref="Expect"/>, with every <see cref="Wait"/> between; those before power leave every control at rest again.
    /// </summary>
    public Operation.Set? Do { get; init; }

    /// <summary>How long to wait for what ends by itself, or null.</summary>
    public TimeSpan? Wait { get; init; }
}

/// <summary>A terminal with what is printed there and what the owner calls it.</summary>
/// <param name="Terminal">The terminal.</param>
/// <param name="Name">The owner's name for what goes there (<c>stop lamp</c>), or null.</param>
public sealed record Mark(TerminalRef Terminal, string? Name)
{
    /// <summary>What is touched in its place, as <c>the clip for </c>; empty: the terminal itself.</summary>
    public string Instead { get; init; } = "";

    /// <summary><c>box X4 (stop lamp)</c></summary>
    public override string ToString()
    {
        var place = Terminal.Terminal.Length == 0 ? Terminal.Part : $"{Terminal.Part} {Terminal.Terminal}";
        return Instead + (Name is null || Names.Same(Name, Terminal.Terminal) ? place : $"{place} ({Name})");
    }
}

/// <summary>How to measure.</summary>
/// <param name="Dial">What the dial is set to.</param>
/// <param name="RedSocket">Socket the red lead plugs into.</param>
/// <param name="BlackSocket">Socket the black lead plugs into.</param>
/// <param name="RedTip">Where the red tip goes.</param>
/// <param name="BlackTip">Where the black tip goes.</param>
/// <param name="First">What to do before it is believed.</param>
/// <param name="PowerOn">Whether power is on.</param>
public sealed record MeterCard(Dial Dial, string RedSocket, string BlackSocket, Mark RedTip, Mark BlackTip, string First, bool PowerOn);

/// <summary>A dial position of a hand meter.</summary>
public enum Dial
{
    /// <summary>V with a line and dashes.</summary>
    Volts,

    /// <summary>Ω.</summary>
    Ohms,

    /// <summary>A in line with the supply, 10 A socket.</summary>
    Amps,
}

/// <summary>Something to see or read, computed from the file.</summary>
/// <param name="What">The lamp, light, fuse, or what the meter shows, in the owner's names.</param>
/// <param name="Shows">In words: <c>lit</c>, <c>on</c>, or the band as text.</param>
/// <param name="Band">The numbers behind it, or null when it is seen, not read.</param>
public sealed record Expectation(string What, string Shows, Band? Band = null)
{
    /// <summary>Whether something on the bench shows it; false for the amps where no meter is in line.</summary>
    public bool IsShown { get; init; } = true;

    /// <summary>Whether a number is to be read off and written down.</summary>
    public bool IsRead => Band is not null && IsShown;
}

/// <summary>The span a reading should fall in.</summary>
/// <param name="Least">Lower end; null: none.</param>
/// <param name="Computed">What the simulation gives; null where only a limit is known.</param>
/// <param name="Most">Upper end; null: none.</param>
/// <param name="Unit">Unit of all three.</param>
public sealed record Band(double? Least, double? Computed, double? Most, Unit Unit);

using System.Collections.Immutable;
using Loomwright.Bench;
using Loomwright.Cases;
using Loomwright.Checks;
using Loomwright.Contacts;
using Loomwright.Design;
using Loomwright.Diagnosis;
using Loomwright.Dictionary;
using Loomwright.Drawing;
using Loomwright.Faults;
using Loomwright.Findings;
using Loomwright.Fixes;
using Loomwright.Parts;
using Loomwright.Proof;
using Loomwright.ProjectFile;
using Loomwright.Simulation;
using Loomwright.Sizing;
using Loomwright.Text;
using Loomwright.Walk;

namespace Loomwright;

/// <summary>
/// One bike as its design file tells it, and everything that can be asked of it. The only door for the outer projects.
/// What needs a design throws <see cref="InvalidOperationException"/> while <see cref="Loom"/> is null: ask that first.
/// </summary>
public sealed class Bike
{
    private readonly DesignFile _file;
    private readonly Lazy<Study> _study;
    private readonly Lazy<ImmutableArray<Finding>> _findings;
    private readonly Lazy<ImmutableArray<Fix>> _fixes;
    private readonly Lazy<Plan> _plan;
    private readonly Lazy<Plan> _planOnTheBike;
    private readonly Lazy<Proven> _proven;
    private double _proofDone;
    private readonly Lazy<ImmutableArray<SheetName>> _sheets;

    private Bike(DesignFile file)
    {
        _file = file;
        _study = new(() => new Study(Known));
        _findings = new(() => Loom is null ? [] : Rules.Check(_study.Value));
        _fixes = new(() => Loom is null ? [] : Cures.Of(_study.Value, _file, Check()));
        _plan = new(() => Bench.Plan.For(Known));
        _planOnTheBike = new(() => Bench.OnTheBike.BikePlan.For(Known));
        _proven = new(() => Proven.Of(_plan.Value, done => Volatile.Write(ref _proofDone, done)));
        _sheets = new(() => Drawing.Sheets.Of(Known));
        Controls = file.Loom is null ? [] : [.. file.Loom.Parts.SelectMany(p => Model(p).Controls).DistinctBy(c => c.Name, Names.Comparer)];
    }

    /// <summary>Reads a design. Never throws: what is wrong with it stands in <see cref="ReadingFindings"/>.</summary>
    public static Bike Read(SourceText text) => new(DesignFile.Read(text));

    /// <summary>The text it was read from.</summary>
    public SourceText Text => _file.Text;

    /// <summary>What the owner has, as far as it could be read; null when nothing could.</summary>
    public Loom? Loom => _file.Loom;

    /// <summary>Whether every word of the file was understood.</summary>
    public bool IsComplete => _file.IsComplete;

    /// <summary>What is wrong with the file as a text, in file order.</summary>
    public ImmutableArray<Finding> ReadingFindings => _file.Findings;

    /// <summary>Everything a hand can operate, in file order; what several parts share is there once.</summary>
    public ImmutableArray<Control> Controls { get; }

    /// <summary>Where the file tells of a subject; its beginning when it does not.</summary>
    public Span Place(Subject subject) => _file.Place(subject) ?? default;

    /// <summary>Makes all edits to the file's text or none; paths are of the text as it stands here.</summary>
    public EditOutcome Edit(params IReadOnlyList<Edit> edits) => _file.Edit(edits);

    /// <summary>Edits made while looking at an older text, as they are to be made here; null when what they touch was changed since or is gone.</summary>
    /// <param name="seen">The older text.</param>
    /// <param name="since">Every change from it to this text, in order, each on the text the one before it gave.</param>
    /// <param name="edits">With paths of the older text.</param>
    public ImmutableArray<Edit>? Carry(SourceText seen, IReadOnlyList<ImmutableArray<Replacement>> since, IReadOnlyList<Edit> edits) =>
        Carrying.Carry(Tree.Read(seen).Root, _file.Tree.Root, since, edits);

    /// <summary>What the part's kind makes of it; a part of an unknown kind has no terminals.</summary>
    public static Model Model(Part part) => Kinds.Find(part.Kind)?.Build(part) ?? new Model { Terminals = [] };

    /// <summary>What the rules find in the design, the severest first. Empty when there is no design.</summary>
    public ImmutableArray<Finding> Check() => _findings.Value;

    /// <summary>What the file could be changed to, one finding cured by each, in the order of the findings.</summary>
    public ImmutableArray<Fix> Fixes => _fixes.Value;

    /// <summary>A fix tried on the text: what it changes, and whether anything speaks against writing it.</summary>
    public TriedFix Try(Fix fix) => Trying.Of(_file, Check(), fix);

    /// <summary>The bike with power connected and everything at rest, with a fault put in or none.</summary>
    public Rig Start(Fault? fault = null) =>
        fault is null ? new Rig(Known) : new Rig(With(fault), new RigOptions { Healthy = Known });

    /// <summary>What a moment of the bike, with a fault in or none, would burn or break; in words, the worst first.</summary>
    public ImmutableArray<string> Harm(Frame frame, Fault? fault = null) => Sizing.Harm.Of(With(fault), frame);

    /// <summary>What the rules find with the fault in that they do not find without it, the severest first.</summary>
    public ImmutableArray<Finding> Check(Fault fault)
    {
        var before = Check();
        return [.. Rules.Check(With(fault)).Where(f => f.Severity > Severity.Note && !before.Any(b => b.Code == f.Code && b.Where == f.Where))];
    }

    /// <summary>The sheets this bike can be drawn on, in the order of their pages.</summary>
    public ImmutableArray<SheetName> Sheets => _sheets.Value;

    /// <summary>One of the sheets; null when the design has nothing of that name.</summary>
    /// <param name="trials">How many arrangements to look at where the sheet is arranged by a search.</param>
    public Scene? Sheet(SheetKind kind, string of = "", int trials = Drawing.Sheets.UsualTrials) => Drawing.Sheets.One(Known, kind, of, trials) is { } scene ? scene with { Source = Text.Name } : null;

    /// <summary>The text with every box of the overview put where a search finds best; it stays there from then on.</summary>
    public EditOutcome Arrange(int trials = Drawing.Sheets.UsualTrials) => Edit(EditsToArrange(trials));

    /// <summary>The edits of <see cref="Arrange"/>, to be made through whatever keeps the file.</summary>
    public ImmutableArray<Edit> EditsToArrange(int trials = Drawing.Sheets.UsualTrials) => LayoutEdit.Of(_file.Tree, Drawing.Sheets.Arrange(Known, trials));

    /// <summary>
    /// The text with one box of the overview moved: its upper left corner at a spot (pixels of the sheet), or as near as no other
    /// box is in its way. Its wires are laid again, all others stand. The first time the sheet is arranged with it.
    /// </summary>
    public EditOutcome Drag(string part, int x, int y) => EditsToDrag(part, x, y) is { } edits
        ? Edit(edits)
        : new EditOutcome.Refused($"there is no part “{part}”", "read the file again");

    /// <summary>The edits of <see cref="Drag"/>; null when there is no such part.</summary>
    public ImmutableArray<Edit>? EditsToDrag(string part, int x, int y) => Drawing.Sheets.Move(Known, part, x, y) is { } placing ? LayoutEdit.Of(_file.Tree, placing) : null;

    /// <summary>The whole bike as one sheet.</summary>
    /// <param name="trials">How many arrangements to look at: more take longer; many more mostly give fewer crossings.</param>
    public Scene Overview(int trials = Drawing.Sheets.UsualTrials) => Drawing.Sheets.Overview(Known, trials) with { Source = Text.Name };

    /// <summary>One function as a sheet of lines from plus to minus; null when the design promises none of that name.</summary>
    public Scene? FunctionSheet(string name) => Sheet(SheetKind.Function, name);

    /// <summary>The way of everything that is seen or heard from plus to minus, in file order.</summary>
    public ImmutableArray<LoadLine> LoadLines => LoadLine.All(Known);

    /// <summary>Every single fault the catalogue knows for this bike, in a stable order.</summary>
    public ImmutableArray<Fault> Faults() => Catalogue.Of(Known);

    /// <summary>The same faults with what sets each right and how it comes about.</summary>
    public ImmutableArray<ListedFault> ListFaults(PriorOptions? options = null) => Catalogue.List(Known, options);

    /// <summary>What every single fault looks like after every stimulus.</summary>
    public FaultTable Dictionary(DictionaryOptions? options = null) => FaultTable.Of(Known, options);

    /// <summary>What a search for a cause works with. Takes as long as the dictionary.</summary>
    /// <param name="also">What was done besides what is usual.</param>
    /// <param name="stop">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public TroubleTable Trouble(IEnumerable<Stimulus>? also = null, CancellationToken stop = default) => TroubleTable.Of(Known, also, stop: stop);

    /// <summary>A fault somebody met and told of, put to the search with this bike as the healthy circuit; null when the case cannot be read, for the findings' reason.</summary>
    public (CaseSearch? Search, ImmutableArray<Finding> Findings) Case(SourceText text) =>
        CaseFile.Read(text) is { Case: { } told } file ? (CaseSearch.Of(Known, told), file.Findings) : (null, CaseFile.Read(text).Findings);

    /// <summary>Reads what was done and seen, <c>lock=riding, front brake=pressed: rear cluster stop=dark</c>.</summary>
    public (Report? Report, Problem? Problem) Saw(string text) => Report.Saw(text, Known);

    /// <summary>Reads what was done and measured, <c>lock=riding: box.X4 to battery.- = 12.4 V</c>.</summary>
    public (Report? Report, Problem? Problem) Read(string text) => Report.Read(text, Known);

    /// <summary>Reads what a check of a thing itself found, <c>terminals of box: stop lamp feed sits on box.X3</c>.</summary>
    public (Report? Report, Problem? Problem) Found(string text) => Report.Found(text, Known);

    /// <summary>What was done, and that the person could not tell what came of it.</summary>
    public (Report? Report, Problem? Problem) NotSure(string done) => Report.NotSure(done, Known);

    /// <summary>Reads a fault's text id, <c>open: stop lamp feed</c>.</summary>
    public FaultReading Fault(string id) => FaultText.Read(id, Known);

    /// <summary>The staged bench plan as it is before it is proven.</summary>
    public Plan Plan(PlanOptions? options = null) => options is null ? _plan.Value : Bench.Plan.For(Known, options);

    /// <summary>The second plan: the finished loom on the bike; worked out once.</summary>
    public Plan PlanOnTheBike() => _planOnTheBike.Value;

    /// <summary>The staged bench plan with what it catches of every single fault, and the measurements that took. Takes seconds; worked out once.</summary>
    public Proven Proof(PlanOptions? options = null) => options is null ? _proven.Value : Proven.Of(Bench.Plan.For(Known, options));

    /// <summary>Every single fault that does harm in some state of the staged bench plan: those that <see cref="Proof"/> lists.</summary>
    public ImmutableArray<Fault> HarmfulFaults() => ProofSoFar is { } proven ? [.. proven.Harm.Faults.Select(f => f.Fault)] : Proven.Harmful(_plan.Value);

    /// <summary>Every state the bike can be brought into, against what its functions promise.</summary>
    public Walked Walk(WalkOptions? options = null) => Walker.Walk(Known, options);

    /// <summary>What a walk notices when the wire of that name is left out; null when there is no such wire.</summary>
    public WireRemoved? WithoutWire(string wire, WalkOptions? options = null) =>
        Known.Wire(wire) is { } known ? WireRemoved.Of(Known, known, options ?? new WalkOptions()) : null;

    /// <summary>Wires and fuses against what flows, by a rule or by the one the design names.</summary>
    public Sized Size(AmpacityRule? rule = null) => Sized.Of(Known, rule);

    /// <summary>The edits that write a contact table measured to the end into the switch of that name, or as a new one; and what comes of them.</summary>
    /// <exception cref="InvalidOperationException">It is not measured to the end.</exception>
    public (ImmutableArray<Edit> Edits, EditOutcome Outcome) Write(string part, UnmarkedSwitch read) => read is { State: Contacts.Known.Measured, InWords: { } table }
        ? SwitchTable.Write(_file, part, read.Leads, read.Positions.Select(p => (p, table[p])))
        : throw new InvalidOperationException("a table that is only likely is not written");

    /// <summary>Which share of <see cref="Proof"/> is worked out, roughly, 0 to 1: for a person who waits for it.</summary>
    public double ProofDone => Volatile.Read(ref _proofDone);

    /// <summary>What <see cref="Proof"/> found, if it was asked before; else null.</summary>
    public Proven? ProofSoFar => _proven.IsValueCreated ? _proven.Value : null;

    private Loom With(Fault? fault) => fault is null ? Known : Patch.Apply(Known, fault);

    private Loom Known => Loom ?? throw new InvalidOperationException("nothing of this design could be read");
}

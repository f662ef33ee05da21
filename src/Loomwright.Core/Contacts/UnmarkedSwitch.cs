using System.Collections.Immutable;

namespace Loomwright.Contacts;

/// <summary>How far the contact table is known.</summary>
public enum Known
{
    /// <summary>More readings are needed.</summary>
    NotYet,

    /// <summary>One common table is at least 0.95 likely; what was not read is expected, not measured.</summary>
    Likely,

    /// <summary>Every pair in every position was read, or follows from readings because metal joins in groups.</summary>
    Measured,

    /// <summary>Readings contradict each other and stayed so when repeated.</summary>
    DoesNotFit,
}

/// <summary>The next pair to touch.</summary>
/// <param name="Position">The position to stand in.</param>
/// <param name="One">One lead.</param>
/// <param name="Other">The other lead.</param>
/// <param name="Again">True when it was read before and does not fit the others.</param>
public sealed record Question(int Position, int One, int Other, bool Again)
{
    /// <summary>Whether the tips stay on the pair that was read last, and only the switch is turned.</summary>
    public bool Stays { get; init; }
}

/// <summary>A common table that is still possible.</summary>
/// <param name="Name">What such a switch is.</param>
/// <param name="Chance">How likely, 0…1.</param>
/// <param name="Table">What it joins in each position, in the order of the owner's leads.</param>
public sealed record Candidate(string Name, double Chance, ImmutableArray<Joined> Table)
{
    /// <summary>Its table in the owner's words: each position with the pairs it joins.</summary>
    public ImmutableDictionary<string, ImmutableArray<ImmutableArray<string>>> In(UnmarkedSwitch read) => read.Named(Table);
}

/// <summary>A switch or lock that nobody has marked, as far as the meter has told it. Power off and unplugged while reading.</summary>
public sealed class UnmarkedSwitch
{
    /// <summary>Most leads and positions that can be worked out.</summary>
    public const int MostLeads = 8, MostPositions = 8;

    private const double Enough = 0.95;

    private readonly ImmutableArray<PositionRead> _positions;
    private readonly ImmutableArray<Reading> _readings;

    private UnmarkedSwitch(ImmutableArray<string> leads, ImmutableArray<string> positions, ImmutableArray<Reading> readings, bool isClipped)
    {
        (Leads, Positions, _readings) = (leads, positions, readings);
        var all = Joined.All(leads.Length);
        _positions = [.. positions.Select((_, p) => new PositionRead(all, [.. readings.Where(r => r.Position == p)]))];
        var belief = new Belief(leads.Length, _positions);
        Candidates = [.. belief.Common.Select(c => new Candidate(c.Name, c.Weight / belief.Total, c.Table))];
        Another = belief.Other / belief.Total;
        var misfit = _positions.SelectMany(p => p.Misfit).ToImmutableArray();
        var doubted = misfit.Where(r => Times(r) < 2).OrderBy(Times).FirstOrDefault();
        State = !misfit.IsEmpty && doubted is null ? Known.DoesNotFit
            : !misfit.IsEmpty ? Known.NotYet
            : _positions.All(p => p.Possible.Length == 1) ? Known.Measured
            : Candidates is [{ Chance: >= Enough }, ..] ? Known.Likely : Known.NotYet;
        Next = State == Known.DoesNotFit ? null
            : doubted is { } again ? new Question(again.Position, again.One, again.Other, Again: true)
            : Asked(belief, readings is [.., var last] ? last : null, isClipped);
        Misfit = misfit;
    }

    private static Question? Asked(Belief belief, Reading? last, bool isClipped)
    {
        var at = last?.Position ?? 0;
        var next = isClipped ? belief.NextClipped(at, last is null ? null : (Math.Min(last.One, last.Other), Math.Max(last.One, last.Other))) : belief.Next(at);
        return next is var (position, one, other) ? new Question(position, one, other, Again: false) { Stays = last?.Is(last.Position, one, other) == true } : null;
    }

    /// <summary>What the readings tell so far.</summary>
    /// <param name="leads">Names of 2 to 8 leads, all different.</param>
    /// <param name="positions">Names of 2 to 8 positions in the order of turning, all different.</param>
    /// <param name="readings">In the order taken; a later one of the same pair and position replaces the earlier.</param>
    /// <param name="isClipped">Whether the meter has clips: they stay on a pair while the switch is turned through its positions, instead of all pairs being touched in one position.</param>
    /// <exception cref="ArgumentException">Too few or too many leads or positions, or a reading of a pair that is not there.</exception>
    public static UnmarkedSwitch Of(ImmutableArray<string> leads, ImmutableArray<string> positions, ImmutableArray<Reading> readings, bool isClipped = false)
    {
        if (leads.Length is < 2 or > MostLeads || positions.Length is < 2 or > MostPositions)
        {
            throw new ArgumentException("2 to 8 leads and 2 to 8 positions can be worked out.", nameof(leads));
        }

        return readings.Any(r => r.One == r.Other || !InRange(r.One, leads) || !InRange(r.Other, leads) || !InRange(r.Position, positions))
            ? throw new ArgumentException("A reading is of two different leads that are there, in a position that is there.", nameof(readings))
            : new(leads, positions, readings, isClipped);
    }

    /// <summary>Names of the leads.</summary>
    public ImmutableArray<string> Leads { get; }

    /// <summary>Names of the positions in the order of turning.</summary>
    public ImmutableArray<string> Positions { get; }

    /// <summary>How far it is known.</summary>
    public Known State { get; }

    /// <summary>The next pair to touch; null when all is known, or nothing fits.</summary>
    public Question? Next { get; }

    /// <summary>The common tables still possible, the likeliest first.</summary>
    public ImmutableArray<Candidate> Candidates { get; }

    /// <summary>How likely it is a table in no list, 0…1.</summary>
    public double Another { get; }

    /// <summary>Readings that cannot all be right.</summary>
    public ImmutableArray<Reading> Misfit { get; }

    /// <summary>The table, measured or likely; null before.</summary>
    public ImmutableArray<Joined>? Table => State switch
    {
        Known.Measured => [.. _positions.Select(p => p.Possible[0])],
        Known.Likely => Candidates[0].Table,
        _ => null,
    };

    /// <summary>Every pair in every position was read as open: what no switch does, and a meter that is not in order always.</summary>
    public bool NothingConducts => State == Known.Measured && _positions.All(p => p.Possible[0].Pairs.IsEmpty);

    /// <summary>What was not touched but follows from what was: lead to lead in a position, and whether they are joined.</summary>
    public ImmutableArray<(int Position, int One, int Other, bool IsJoined)> Following =>
    [
        .. from p in Enumerable.Range(0, Positions.Length)
           from one in Enumerable.Range(0, Leads.Length)
           from other in Enumerable.Range(one + 1, Leads.Length - one - 1)
           where !_readings.Any(r => r.Is(p, one, other))
           let joined = Measured(p, one, other)
           where joined is not null
           select (p, one, other, joined.Value),
    ];

    /// <summary>How far it is, in a sentence.</summary>
    public string Summary => State switch
    {
        Known.Measured when NothingConducts => "Nothing conducts in any position. No switch does that: touch the probes together, the meter must beep; look at its dial, its battery and its leads, and that both tips reach bare metal. Then begin again.",
        Known.Measured => Candidates is [var only, ..] ? $"Measured to the end: {only.Name}." : "Measured to the end: a table of its own, as read.",
        Known.Likely => $"Most likely {Candidates[0].Name}. The readings below make it sure: take them before power, one wrong guess is a dead short.",
        Known.DoesNotFit => "These readings cannot all be right, and stayed so when repeated: a worn contact, or something inside that a meter cannot tell. Do not put power on it; find its drawing or open it.",
        _ => "Not known yet.",
    };

    /// <summary>What to beware of, by what was measured: shorts for every choice of feed and ground, what is inside, what does not fit.</summary>
    public ImmutableArray<string> Warnings =>
    [
        .. Misfit.Select(r => $"In {Positions[r.Position]}, {Leads[r.One]} to {Leads[r.Other]}: this reading and others cannot all be right."),
        .. Inside.Select(r => FormattableString.Invariant($"In {Positions[r.Position]}, {Leads[r.One]} to {Leads[r.Other]}: {r.Ohms:0.##} Ω, neither open nor joined. Something is inside; the original ignition unit may look for it.")),
        .. FeedAndGround.Of(this).Where(c => !c.Short.IsEmpty).Select(c => c.Words),
    ];

    /// <summary>The table in the owner's words: each position with the pairs it joins; null while there is none.</summary>
    public ImmutableDictionary<string, ImmutableArray<ImmutableArray<string>>>? InWords => Table is { } table ? Named(table) : null;

    internal ImmutableDictionary<string, ImmutableArray<ImmutableArray<string>>> Named(ImmutableArray<Joined> table) => Positions
        .Select((name, p) => (name, Pairs: table[p].Pairs.Select(pair => ImmutableArray.Create(Leads[pair.One], Leads[pair.Other])).ToImmutableArray()))
        .ToImmutableDictionary(p => p.name, p => p.Pairs);

    /// <summary>Whether two leads are joined in a position by what was read: true, false, or null when not told.</summary>
    public bool? Measured(int position, int one, int other) => _positions[position].Joins(one, other);

    /// <summary>The readings that count, with ohms between leads that are not joined: something is inside.</summary>
    public ImmutableArray<Reading> Inside => [.. Counting.Where(r => r is { Heard: Heard.Ohms, IsJoined: false })];

    /// <summary>The latest reading of each pair in each position.</summary>
    public ImmutableArray<Reading> Counting => [.. _readings.Where((r, i) => !_readings.Skip(i + 1).Any(later => later.Is(r.Position, r.One, r.Other)))];

    private int Times(Reading reading) => _readings.Count(r => r.Is(reading.Position, reading.One, reading.Other));

    private static bool InRange(int index, ImmutableArray<string> names) => index >= 0 && index < names.Length;
}

using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Parts;
using Loomwright.Simulation;
using Loomwright.Text;

namespace Loomwright.Walk;

/// <summary>One thing that is not as promised in one state.</summary>
internal sealed record Mismatch(SurpriseKind Kind, string? Function, PartSurprise Part);

/// <summary>What one state is worth.</summary>
/// <param name="Mismatches">Empty when all is as promised.</param>
/// <param name="DrainAmps">What the supply gives while no function works; null while one does.</param>
/// <param name="BackFeeds">Outputs by box and place, and what flows into them while they are off.</param>
internal sealed record Verdict(ImmutableArray<Mismatch> Mismatches, double? DrainAmps, ImmutableArray<(int Box, int Output, double Amps)> BackFeeds);

/// <summary>Compares what is seen in a state with what the functions promise there. Not for two threads at once.</summary>
internal sealed class Judge
{
    // More than a body diode lets through backwards or an output leaks (judgement).
    private const double BackFeedAmps = 0.001;

    private readonly Wiring _wiring;
    private readonly Promises _promises;
    private readonly Watching _watching;
    private readonly Symbol[] _rest;
    private readonly uint[] _promised;
    private readonly uint[] _allowed;
    private readonly ImmutableArray<ImmutableArray<(int Sight, Symbol Symbol)>> _shows;
    private readonly ImmutableArray<ImmutableArray<(int Sight, Symbol Symbol)>> _may;
    private readonly ImmutableArray<(int Box, int Output, int Link)> _backFeeding;

    public Judge(Wiring wiring, Promises promises, Watching watching)
    {
        (_wiring, _promises, _watching) = (wiring, promises, watching);
        _rest = [.. watching.Seen(new Settled(wiring.Start(), Outcome.Settled, [Nothing()], [])).Select(s => s.Symbol)];
        _promised = new uint[_rest.Length];
        _allowed = new uint[_rest.Length];
        _shows = [.. promises.Functions.Select(f => Places(f.Shows))];
        _may = [.. promises.Functions.Select(f => Places(f.May))];
        _backFeeding = [.. Solved.BackFeeding(wiring)];
    }

    /// <summary>What a settled state is worth.</summary>
    public Verdict Of(Setting setting, Inside inside, Settled settled)
    {
        Array.Clear(_promised);
        Array.Clear(_allowed);
        var working = false;
        for (var f = 0; f < _shows.Length; f++)
        {
            if (_promises.Works(f, inside.Promised, setting))
            {
                working = true;
                Mark(_shows[f], _promised);
                Mark(_may[f], _allowed);
            }
        }

        ImmutableArray<Mismatch>.Builder? mismatches = null;
        var all = _watching.Seen(settled);
        for (var s = 0; s < _rest.Length; s++)
        {
            var seen = all[s].Symbol;
            var expected = Expected(s);
            if (((expected | _allowed[s]) & Bit(seen)) == 0)
            {
                (mismatches ??= ImmutableArray.CreateBuilder<Mismatch>()).Add(Between(s, expected, seen, setting, inside));
            }
        }

        return new Verdict(mismatches?.ToImmutable() ?? [], working ? null : _wiring.Supplies.Sum(s => -settled.Pictures[0].Amps[s]), BackFeeds(inside, settled.Pictures[0]));
    }

    // What several functions promise of one part is all expected; but dim is not enough where one of them asks for more.
    private uint Expected(int sight)
    {
        var promised = _promised[sight];
        return promised == 0 ? Bit(_rest[sight])
            : (promised & (Bit(Symbol.Lit) | Bit(Symbol.Flashing))) != 0 ? promised & ~Bit(Symbol.Dim)
            : promised;
    }

    private Mismatch Between(int sight, uint expected, Symbol seen, Setting setting, Inside inside)
    {
        var promised = _promised[sight] != 0;
        var function = Enumerable.Range(0, _shows.Length)
            .Where(f => _shows[f].Any(show => show.Sight == sight) && (!promised || _promises.Works(f, inside.Promised, setting)))
            .Select(f => _promises.Functions[f].Name)
            .FirstOrDefault();
        var kind = !promised ? SurpriseKind.NotAskedFor
            : seen == _rest[sight] ? SurpriseKind.ShowsNothing
            : seen == Symbol.Dim ? SurpriseKind.Dimmed
            : SurpriseKind.ShowsOtherwise;
        var words = string.Join(" or ", Enum.GetValues<Symbol>().Where(s => (expected & Bit(s)) != 0).Select(Words.Written));
        return new Mismatch(kind, function, new PartSurprise(_wiring.Sights[sight].Name, words, Words.Written(seen)));
    }

    private ImmutableArray<(int, int, double)> BackFeeds(Inside inside, Picture picture)
    {
        ImmutableArray<(int, int, double)>.Builder? found = null;
        foreach (var (box, output, link) in _backFeeding)
        {
            if (picture.Amps[link] > BackFeedAmps && !inside.State.Boxes[box].Drive(output).On)
            {
                (found ??= ImmutableArray.CreateBuilder<(int, int, double)>()).Add((box, output, picture.Amps[link]));
            }
        }

        return found?.ToImmutable() ?? [];
    }

    private ImmutableArray<(int, Symbol)> Places(ImmutableArray<Show> shows) =>
    [
        .. from show in shows
           from s in Enumerable.Range(0, _wiring.Sights.Length)
           let sight = _wiring.Sights[s]
           where Names.Same(show.What, sight.Name) || Names.Same(show.What, sight.Part) || (sight.Sight is Sight.Lamp && Names.Same(show.What, "all lamps"))
           where Enum.TryParse<Symbol>(show.Symbol, ignoreCase: true, out _)
           select (s, Enum.Parse<Symbol>(show.Symbol, ignoreCase: true)),
    ];

    private static void Mark(ImmutableArray<(int Sight, Symbol Symbol)> shows, uint[] marks)
    {
        foreach (var (sight, symbol) in shows)
        {
            marks[sight] |= Bit(symbol);
        }
    }

    private static uint Bit(Symbol symbol) => 1u << (int)symbol;

    private Picture Nothing() => new(new double[_wiring.NodeCount], new double[_wiring.Links.Length], new double[_wiring.Links.Length], 0);
}

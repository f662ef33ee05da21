using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Loomwright.Simulation;

namespace Loomwright.Walk;

/// <summary>The states reached, each with the state and the event it was first reached by.</summary>
internal sealed class Trail(Shared shared)
{
    /// <summary>Before the first state.</summary>
    public const int Nowhere = -1;

    private readonly Dictionary<Standing, int> _places = [];
    private readonly List<(Standing Standing, int From, Event By)> _states = [];
    private readonly HashSet<Setting> _settings = [];

    public int Count => _states.Count;

    public int SettingCount => _settings.Count;

    public (Setting Setting, Inside Inside) this[int place] => (_states[place].Standing.Setting, _states[place].Standing.Inside);

    /// <summary>How a state was first reached, and from where.</summary>
    public (int From, Reached At) FirstWay(int place) =>
        _states[place] is var (standing, from, by) ? (from, new Reached(by, standing.Setting, standing.Inside, null)) : default;

    public bool Knows(Setting setting, Inside inside) => _places.ContainsKey(new Standing(setting, inside));

    /// <summary>Adds a state; false when it is there.</summary>
    public bool Add(int from, Reached reached)
    {
        var standing = new Standing(reached.Setting, reached.Inside);
        if (!_places.TryAdd(standing, _states.Count))
        {
            return false;
        }

        _states.Add((standing, from, reached.By));
        _settings.Add(reached.Setting);
        return true;
    }

    /// <summary>The operations from everything at rest to a state and on by one more event.</summary>
    public ImmutableArray<WalkStep> Steps(int from, Reached last)
    {
        var steps = new List<WalkStep>();
        var (at, by, setting) = (from, last.By, last.Setting);
        while (by.Control != Event.Power)
        {
            steps.Add(Step(at, by));
            (setting, by, at) = (_states[at].Standing.Setting, _states[at].By, _states[at].From);
        }

        steps.Reverse();
        return [.. BeforePower(setting), .. steps];
    }

    private WalkStep Step(int from, Event by)
    {
        if (by.Control >= 0)
        {
            return Moved(by.Control, by.To, beforePower: false);
        }

        var end = shared.Timers.Next(_states[from].Standing.Inside)[by.To];
        return new WalkStep(FormattableString.Invariant($"{end.Whole.TotalSeconds:0.###} s later the time of {end.Names} runs out"), new Operation.Wait(end.Whole), false);
    }

    private IEnumerable<WalkStep> BeforePower(Setting setting)
    {
        for (var c = 0; c < setting.Positions.Length; c++)
        {
            var at = shared.Settings.RestOf(c);
            while (at != setting.Positions[c])
            {
                at += Math.Sign(setting.Positions[c] - at);
                yield return Moved(c, at, beforePower: true);
            }
        }
    }

    private WalkStep Moved(int control, int to, bool beforePower)
    {
        var facts = shared.Wiring.Controls[control];
        var words = $"{facts.Name} → {facts.Positions[to]}";
        return new WalkStep(beforePower ? $"{words}, before power is connected" : words, new Operation.Set(facts.Name, facts.Positions[to]), beforePower);
    }

    private readonly record struct Standing(Setting Setting, Inside Inside)
    {
        public bool Equals(Standing other) => ReferenceEquals(Setting, other.Setting) && ReferenceEquals(Inside, other.Inside);

        public override int GetHashCode() => HashCode.Combine(RuntimeHelpers.GetHashCode(Setting), RuntimeHelpers.GetHashCode(Inside));
    }
}

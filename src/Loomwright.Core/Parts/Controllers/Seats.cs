using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>What sits on which terminal of a load controller; no terminal has two uses.</summary>
internal sealed class Seats
{
    private readonly Dictionary<string, (Role Role, string? Name)> _taken = new(Names.Comparer);

    public Seats(Marks marks, string supply, string ground)
    {
        Marks = marks;
        (Supply, Ground) = (supply, ground);
        _taken[supply] = (Role.Plus, null);
        if (!_taken.TryAdd(ground, (Role.Minus, null)))
        {
            marks.Complain("ground", $"{ground} is its supply already", "name the terminal of its ground");
        }
    }

    public Marks Marks { get; }

    public string Supply { get; }

    public string Ground { get; }

    public Role RoleOf(string mark) => _taken.TryGetValue(mark, out var seat) ? seat.Role : Role.Lead;

    public string? NameAt(string mark) => _taken.TryGetValue(mark, out var seat) ? seat.Name : null;

    /// <summary>Seats one more terminal of supply or ground; false and a problem when it is taken.</summary>
    public bool TakeBar(string mark, Role role)
    {
        if (_taken.TryAdd(mark, (role, null)))
        {
            return true;
        }

        Marks.Complain("ground", $"{mark} is its supply already", "name the terminal of its ground");
        return false;
    }

    /// <summary>Seats an input or output; null and a problem when the terminal is missing, unknown or taken.</summary>
    public string? Take(string? mark, Role role, string name, string path)
    {
        if (mark is null)
        {
            Marks.Complain(path, $"{name} has no terminal", "write terminal: and the mark on the case");
            return null;
        }

        if (Marks.Find(mark, $"{path}/terminal") is not { } seat)
        {
            return null;
        }

        if (_taken.TryAdd(seat, (role, name)))
        {
            return seat;
        }

        Marks.Complain($"{path}/terminal", $"{seat} is {_taken[seat].Name ?? "its supply or ground"} already", "look up in the manual which of the two sits there");
        return null;
    }
}

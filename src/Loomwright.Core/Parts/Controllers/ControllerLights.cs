using System.Collections.Immutable;
using Loomwright.Design;
using Loomwright.Text;

namespace Loomwright.Parts;

/// <summary>The small lights beside the terminals of a load controller; what each means differs between boxes.</summary>
internal static class ControllerLights
{
    private static readonly ImmutableArray<(string Word, LightMeans Means)> Meanings =
        [("input", LightMeans.Input), ("command", LightMeans.Command), ("voltage", LightMeans.Voltage), ("load current", LightMeans.LoadCurrent), ("trouble", LightMeans.Trouble)];

    public static Parameter Parameter { get; } = new(
        "lights", "What the light at each terminal follows: the input as read, the command, voltage at the terminal, current to the load, or trouble: tripped, or a lamp out.",
        new Form.Each(new Form.Choice([.. Meanings.Select(m => m.Word)])));

    public static ImmutableArray<StatusLight> Read(Settings settings, Seats seats)
    {
        var lights = ImmutableArray.CreateBuilder<StatusLight>();
        foreach (var (mark, value) in settings.Group("lights").Entries)
        {
            var path = $"lights/{mark}";
            if (seats.Marks.Find(mark, path) is not { } terminal || value is not Value.Word { Text: var word } || !Meanings.Any(m => Names.Same(m.Word, word)))
            {
                continue;
            }

            var means = Meanings.First(m => Names.Same(m.Word, word)).Means;
            var role = seats.RoleOf(terminal);
            if (means == LightMeans.Input && role != Role.Input)
            {
                seats.Marks.Complain(path, $"{terminal} is not an input", "write voltage, or declare an input there");
            }
            else if (means is LightMeans.Command or LightMeans.LoadCurrent or LightMeans.Trouble && role != Role.Output)
            {
                seats.Marks.Complain(path, $"{terminal} is not an output", "write voltage, or declare an output there");
            }
            else
            {
                lights.Add(new StatusLight(terminal, means));
            }
        }

        return lights.ToImmutable();
    }
}

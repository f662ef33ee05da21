using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Loomwright.Contacts;
using Loomwright.Quantities;

namespace Loomwright.Verbs;

/// <summary>
/// Readings as JSON lines. Of a switch: <c>{"position": "on", "between": ["red", "brown"], "heard": "beep"}</c>, or <c>"nothing"</c>,
/// or <c>"100 ohm"</c>. Of a lamp: the same without a position, and <c>{"plus": "red", "minus": "brown", "heard": "lights"}</c>
/// or <c>"dark"</c> when it was fed through 1 kΩ.
/// </summary>
internal sealed class ReadingLines(ImmutableArray<string> leads, ImmutableArray<string> positions)
{
    /// <summary>What is wrong with the first line that cannot be read, with its number; null when all were.</summary>
    public string? Trouble { get; private set; }

    /// <summary>The readings of a switch up to the first line that cannot be read.</summary>
    public ImmutableArray<Reading> OfSwitch(IEnumerable<string> lines) => Each(lines, SwitchReading);

    /// <summary>The readings of a lamp up to the first line that cannot be read.</summary>
    public ImmutableArray<LampReading> OfLamp(IEnumerable<string> lines) => Each(lines, LampReading);

    private ImmutableArray<T> Each<T>(IEnumerable<string> lines, Func<Line, T?> read)
        where T : class
    {
        var readings = ImmutableArray.CreateBuilder<T>();
        foreach (var (text, number) in lines.Select((l, i) => (l, i + 1)).Where(l => !string.IsNullOrWhiteSpace(l.l)))
        {
            try
            {
                var line = JsonSerializer.Deserialize<Line>(text, Strict);
                if (line is null || read(line) is not { } reading)
                {
                    Trouble = string.Create(CultureInfo.InvariantCulture, $"{number}:1: {_why ?? "an empty line of the word null"}");
                    return readings.ToImmutable();
                }

                readings.Add(reading);
            }
            catch (JsonException)
            {
                Trouble = string.Create(CultureInfo.InvariantCulture, $"{number}:1: this is no reading; write {Example}");
                return readings.ToImmutable();
            }
        }

        return readings.ToImmutable();
    }

    private string? _why;

    private string Example => positions.IsEmpty
        ? $"{{\"between\": [\"{leads[0]}\", \"{leads[1]}\"], \"heard\": \"2 ohm\"}}"
        : $"{{\"position\": \"{positions[0]}\", \"between\": [\"{leads[0]}\", \"{leads[1]}\"], \"heard\": \"beep\"}}";

    private Reading? SwitchReading(Line line)
    {
        if (Named("position", line.Position, positions) is not { } position || Pair(line.Between) is not { } pair)
        {
            return null;
        }

        return line.Heard switch
        {
            "beep" => new Reading(position, pair.One, pair.Other, Heard.Beep),
            "nothing" => new Reading(position, pair.One, pair.Other, Heard.Nothing),
            _ => Ohms(line.Heard, "beep, nothing") is { } ohms ? new Reading(position, pair.One, pair.Other, Heard.Ohms, ohms) : null,
        };
    }

    private LampReading? LampReading(Line line)
    {
        if (line.Plus is null && line.Minus is null)
        {
            return Pair(line.Between) is not { } pair ? null
                : line.Heard == "nothing" ? new LampReading(pair.One, pair.Other)
                : Ohms(line.Heard, "nothing") is { } ohms ? new LampReading(pair.One, pair.Other, ohms) : null;
        }

        if (Pair([line.Plus ?? "", line.Minus ?? ""]) is not { } fed)
        {
            return null;
        }

        _why = "“heard” of a fed lamp is lights or dark";
        return line.Heard is "lights" or "dark" ? new LampReading(fed.One, fed.Other, Fed: true, Lights: line.Heard == "lights") : null;
    }

    private (int One, int Other)? Pair(string[]? between)
    {
        if (between is not [var one, var other] || Text.Names.Same(one, other))
        {
            _why = $"“between” names two different leads; write {Example}";
            return null;
        }

        return Named("lead", one, leads) is { } first && Named("lead", other, leads) is { } second ? (first, second) : null;
    }

    private int? Named(string what, string? name, ImmutableArray<string> names)
    {
        var at = names.Select((n, i) => (n, i)).Where(n => name is not null && Text.Names.Same(n.n, name)).Select(n => (int?)n.i).FirstOrDefault();
        _why = at is null ? Choosing.None(what, name ?? "", [.. names]) : _why;
        return at;
    }

    private double? Ohms(string? heard, string words)
    {
        var typed = Typed.Read(heard ?? "", Unit.Ohm);
        _why = typed is Typed.Unreadable bad ? $"“heard” is {words} or what the meter shows, 100 ohm: {bad.What}" : "a meter shows no ohms below zero";
        return typed is Typed.Quantity { Si: >= 0 } quantity ? quantity.Si : null;
    }

    private static readonly JsonSerializerOptions Strict = new(JsonSerializerDefaults.Web) { UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow };

    private sealed record Line(string? Position, string[]? Between, string? Plus, string? Minus, string? Heard);
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Loomwright.Diagnosis;

namespace Loomwright.Verbs;

/// <summary>One line of a search for a cause.</summary>
internal abstract record SessionLine
{
    /// <summary>Something seen, measured or not sure of.</summary>
    public sealed record Answer(Report Report) : SessionLine;

    /// <summary>A repair that was made, and on which line of the file that stands, from 1.</summary>
    public sealed record Mended(string Repair, int Line) : SessionLine;
}

/// <summary>
/// A search for a cause as JSON lines: <c>{"do": "lock=riding", "answer": "tail lamp=dark"}</c>, or <c>"not sure"</c>;
/// <c>{"do": "lock=riding", "between": ["box.X4", "battery.-"], "reading": "12.4", "unit": "V"}</c>;
/// <c>{"check": "terminals of box", "answer": "stop lamp feed sits on box.X3"}</c>; <c>{"mended": "REPAIR"}</c>.
/// </summary>
internal static class SessionLines
{
    private const string Example = "{\"do\": \"lock=riding\", \"answer\": \"tail lamp=dark\"}";

    /// <summary>All lines, or what is wrong with the first that cannot be read, with its place.</summary>
    public static (ImmutableArray<SessionLine> Lines, string? Trouble) Read(string? path, Bike bike)
    {
        if (path is null)
        {
            return ([], null);
        }

        string[] written;
        try
        {
            written = File.ReadAllLines(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return ([], $"1:1: it cannot be opened: {e.Message}");
        }

        var lines = ImmutableArray.CreateBuilder<SessionLine>();
        foreach (var (text, number) in written.Select((l, i) => (l, i + 1)).Where(l => !string.IsNullOrWhiteSpace(l.l)))
        {
            var (line, trouble) = One(text, number, bike);
            if (line is null)
            {
                return ([], string.Create(CultureInfo.InvariantCulture, $"{number}:1: {trouble}"));
            }

            lines.Add(line);
        }

        return (lines.ToImmutable(), null);
    }

    private static (SessionLine? Line, string? Trouble) One(string text, int number, Bike bike)
    {
        try
        {
            switch (JsonSerializer.Deserialize<Line>(text, Strict))
            {
                case { Mended: { } repair }:
                    return (new SessionLine.Mended(repair, number), null);
                case { Do: { } done, Between: [var red, var black], Reading: { } reading } line:
                    return Answer(bike.Read($"{done}: {red} to {black} = {reading} {line.Unit}"));
                case { Check: { } check, Answer: { } found }:
                    return Answer(bike.Found($"{check}: {found}"));
                case { Do: { } done, Answer: "not sure" }:
                    return Answer(bike.NotSure(done));
                case { Do: { } done, Answer: { } answer }:
                    return Answer(bike.Saw($"{done}: {answer}"));
            }
        }
        catch (JsonException)
        {
        }

        return (null, $"this is no answer; write {Example}");
    }

    private static (SessionLine? Line, string? Trouble) Answer((Report? Report, Parts.Problem? Problem) read) => read.Report is { } report
        ? (new SessionLine.Answer(report), null)
        : (null, $"{read.Problem!.Path}: {read.Problem.What}; {read.Problem.Cure}");

    private static readonly JsonSerializerOptions Strict = new(JsonSerializerDefaults.Web) { UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow };

    private sealed record Line(string? Do, string? Check, string? Answer, string[]? Between, string? Reading, string? Unit, string? Mended);
}

using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Loomwright.Records;

namespace Loomwright.Killing;

/// <summary>What came of killing the program while answers were handed over.</summary>
/// <param name="Kills">How often it was killed.</param>
/// <param name="Given">Answers given on the phone.</param>
/// <param name="SaidKept">Of them, said to be kept before a kill.</param>
/// <param name="Lost">Said to be kept and not in the record.</param>
/// <param name="Missing">Given, handed over again after the last start, and still not in the record.</param>
/// <param name="Doubled">In the record more than once.</param>
/// <param name="DesignWhole">Whether the design is byte for byte what it was.</param>
public sealed record Killed(int Kills, int Given, int SaidKept, int Lost, int Missing, int Doubled, bool DesignWhole);

/// <summary>Starts the program, hands answers over as a phone does, kills it at a random moment (SIGKILL on Linux), starts it again, and at the end holds the record against what was said.</summary>
public static class Kills
{
    /// <summary>Longest time from the first answer to the kill.</summary>
    public const int MostWaitMilliseconds = 200;

    public static async Task<Killed> Run(string program, string design, string folder, int kills, ulong seed, Action<int>? tell = null, CancellationToken stop = default)
    {
        var file = Path.Combine(folder, "b.loom.yaml");
        await File.WriteAllTextAsync(file, design, stop);
        var random = new Random(unchecked((int)seed));
        using var phone = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false });
        var (given, waiting, kept) = (new List<string>(), new List<string>(), new HashSet<string>(StringComparer.Ordinal));
        var (session, saidKept) = ("", 0);
        for (var kill = 0; kill <= kills; kill++)
        {
            using var running = Started(program, folder);
            try
            {
                var address = await Address(running, stop);
                session = session.Length > 0 ? session : await Begin(phone, address, stop);
                var at = new Uri(new Uri(address), "/session-api/" + session);
                if (kill == kills)
                {
                    saidKept = kept.Count;
                    await HandOver(phone, at, waiting, kept, stop);
                }
                else
                {
                    // The first answer of a start is slow; the kill is to fall among many.
                    using (await phone.PostAsJsonAsync(at, Array.Empty<object>(), stop))
                    {
                        // Now the plan is worked out.
                    }

                    var dies = Task.Delay(random.Next(MostWaitMilliseconds), stop).ContinueWith(_ => running.Kill(), stop, TaskContinuationOptions.None, TaskScheduler.Default);
                    await UntilItDies(phone, at, given, waiting, kept, stop);
                    await dies;
                }
            }
            finally
            {
                running.Kill();
                await running.WaitForExitAsync(stop);
            }

            tell?.Invoke(kill);
        }

        using var records = RecordFile.Open(folder);
        var there = records.Entries(session).Select(e => e.Id).ToList();
        return new Killed(
            kills,
            given.Count,
            saidKept,
            kept.Except(there).Count(),
            given.Except(there).Count(),
            there.Count - there.Distinct(StringComparer.Ordinal).Count(),
            await File.ReadAllTextAsync(file, stop) == design);
    }

    private static async Task UntilItDies(HttpClient phone, Uri at, List<string> given, List<string> waiting, HashSet<string> kept, CancellationToken stop)
    {
        try
        {
            while (true)
            {
                var id = "a" + given.Count.ToString(CultureInfo.InvariantCulture);
                given.Add(id);
                waiting.Add(id);
                await HandOver(phone, at, waiting, kept, stop);
            }
        }
        catch (HttpRequestException)
        {
            // It is dead; what was not said to be kept waits for the next start.
        }
        catch (IOException)
        {
            // Dead in the middle of its answer: the same.
        }
    }

    private static async Task HandOver(HttpClient phone, Uri at, List<string> waiting, HashSet<string> kept, CancellationToken stop)
    {
        var answers = waiting.Select(id => new { id, kind = "done", step = "s0.fetch.1", at = "2026-05-04T12:00:00+02:00" });
        using var answer = await phone.PostAsJsonAsync(at, answers, stop);
        answer.EnsureSuccessStatusCode();
        var said = await answer.Content.ReadFromJsonAsync<JsonElement>(stop);
        kept.UnionWith(said.EnumerateArray().Select(e => e.GetProperty("id").GetString()!));
        waiting.RemoveAll(kept.Contains);
    }

    private static async Task<string> Begin(HttpClient phone, string address, CancellationToken stop)
    {
        using var form = new FormUrlEncodedContent([new("who", "Ann")]);
        using var began = await phone.PostAsync(new Uri(new Uri(address), "/session-begin/b.loom.yaml"), form, stop);
        if (began.StatusCode != HttpStatusCode.Redirect)
        {
            throw new InvalidOperationException($"no session was begun: {began.StatusCode}");
        }

        var page = await phone.GetStringAsync(new Uri(new Uri(address), "/session/b.loom.yaml"), stop);
        return page.Split("data-session=\"")[1].Split('"')[0];
    }

    private static Process Started(string program, string folder) => Process.Start(new ProcessStartInfo("dotnet", [program, "serve", folder, "--port", "0"])
    {
        UseShellExecute = false,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;

    private static async Task<string> Address(Process running, CancellationToken stop)
    {
        while (await running.StandardOutput.ReadLineAsync(stop) is { } line)
        {
            if (line.Split("http://") is [_, var rest])
            {
                return "http://" + rest.Split(' ')[0];
            }
        }

        throw new InvalidOperationException("the program ended: " + await running.StandardError.ReadToEndAsync(stop));
    }
}

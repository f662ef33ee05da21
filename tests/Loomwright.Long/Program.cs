using Loomwright.Long;
using Loomwright.Long.Outfit;
using Loomwright.Long.Policy;
using Loomwright.Long.States;

// The long runs, by name. Each writes docs/long/NAME.md and ends with 0 when all is well.
var runs = new Dictionary<string, Func<LongRun, string>>(StringComparer.Ordinal)
{
    ["mutants"] = SpoiltFiles.Run,
    ["networks"] = Networks.Run,
    ["walk"] = Walks.Run,
    ["states"] = StatesRun.Run,
    ["kills"] = KillRun.Run,
    ["outage"] = OutageRun.Run,
    ["dictionary"] = Dictionaries.Run,
    ["proof"] = Proofs.Run,
    ["sessions"] = SearchRun.Run,
    ["policy"] = PolicyRun.Run,
};

if (args is ["turnstone"])
{
    // An example made by a program: no result to keep but the file itself.
    Directory.CreateDirectory(Path.GetDirectoryName(Turnstone.Path)!);
    File.WriteAllText(Turnstone.Path, Turnstone.Text());
    return 0;
}

if (args.Length == 0 || !runs.TryGetValue(args[0], out var run))
{
    Console.Error.WriteLine("usage: ./long NAME [--seed N] [--count N] [--only EXAMPLE], NAME one of: " + string.Join(", ", runs.Keys) + "; or: ./long turnstone");
    return 2;
}

return LongRun.Do(args, run);

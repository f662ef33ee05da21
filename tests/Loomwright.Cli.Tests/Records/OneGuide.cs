using Loomwright.Live;
using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Tests.Records;

/// <summary>One folder with the bench example for all tests of a class, since its plan and what its stages' faults look like are worked out once; each test begins a session of its own.</summary>
public sealed class OneGuide : IDisposable
{
    public const string Name = "b.loom.yaml";

    public static readonly DateTimeOffset Noon = new(2026, 5, 4, 12, 0, 0, TimeSpan.FromHours(2));

    private readonly Folder _folder = new();

    public OneGuide()
    {
        File = _folder.Write(Name, Repository.Read(Called.Bench));
        Live = new(_folder.Path);
        Guide = new(Live);
        var design = Live.Find(Name)!.Current;
        Proofs.Begun(Name, design.Sha256, design.Bike).GetAwaiter().GetResult();
    }

    /// <summary>The design's path.</summary>
    public string File { get; }

    public LiveFolder Live { get; }

    public Guide Guide { get; }

    /// <summary>A session on the bench.</summary>
    public BenchSession Begin(string who = "Ann") => Guide.Begin(Name, who, "red meter", null, Noon)!;

    public void Dispose()
    {
        Guide.Dispose();
        Live.Dispose();
        _folder.Dispose();
    }
}

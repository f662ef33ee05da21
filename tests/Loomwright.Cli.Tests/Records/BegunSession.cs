using Loomwright.Live;
using Loomwright.Records;
using Loomwright.Sessions;

namespace Loomwright.Tests.Records;

/// <summary>A session on the bench example that has begun, in a folder of its own.</summary>
internal sealed class BegunSession : IDisposable
{
    public const string Name = "b.loom.yaml";

    public static readonly DateTimeOffset Noon = new(2026, 5, 4, 12, 0, 0, TimeSpan.FromHours(2));

    private readonly Folder _folder = new();

    public BegunSession(string who)
    {
        File = _folder.Write(Name, Repository.Read(Called.Bench));
        Live = new(_folder.Path);
        Guide = new(Live);
        Session = Guide.Begin(Name, who, "red meter", null, Noon)!;
    }

    /// <summary>The design's path.</summary>
    public string File { get; }

    public LiveFolder Live { get; }

    public Guide Guide { get; }

    public BenchSession Session { get; }

    public void Dispose()
    {
        Guide.Dispose();
        Live.Dispose();
        _folder.Dispose();
    }
}

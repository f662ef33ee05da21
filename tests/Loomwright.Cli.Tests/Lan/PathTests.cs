using System.Net;
using System.Net.Sockets;
using System.Text;
using Loomwright.Records;

namespace Loomwright.Tests.Lan;

public sealed class PathTests
{
    private static readonly string[] Routes =
    [
        "check", "try", "bench", "positions", "sizes", "trouble", "session", "record", "picture", "unmarked", "gallery", "changes", "served", "wire-sheet", "session-ready", "session-begin", "session-api", "",
    ];

    [Fact]
    public async Task No_path_leads_out_of_the_folder()
    {
        await using var garage = await Garage.Open();
        using var outside = new Folder();
        var secret = outside.Write("secret.loom.yaml", "loomwright: 1\nname: SECRET\n");
        File.CreateSymbolicLink(Path.Combine(garage.Folder, "link.loom.yaml"), secret);
        Directory.CreateSymbolicLink(Path.Combine(garage.Folder, "linked"), outside.Path);
        var up = Path.GetRelativePath(garage.Folder, secret);
        string[] tricks =
        [
            up, up.Replace("/", "%2f", StringComparison.Ordinal), up.Replace("..", "%2e%2e", StringComparison.Ordinal), up.Replace("/", "\\", StringComparison.Ordinal),
            up.Replace("/", "%5c", StringComparison.Ordinal), "./" + up, "b.loom.yaml/../" + up, secret, "/" + secret, "file://" + secret, "linked/secret.loom.yaml", "link.loom.yaml",
            up.Replace("/", "%252f", StringComparison.Ordinal), up + "%00.loom.yaml", up.Replace("/", "//", StringComparison.Ordinal),
        ];
        foreach (var (method, trick) in Routes.SelectMany(route => tricks.Select(t => $"/{route}/{t}")).SelectMany(t => t.StartsWith("/session-", StringComparison.Ordinal) ? [("GET", t), ("POST", t)] : new[] { ("GET", t) }))
        {
            var answer = await Raw(garage, method, trick);
            Assert.DoesNotContain("SECRET", answer, StringComparison.Ordinal);
            Assert.DoesNotContain(" 500 ", answer.Split('\n')[0], StringComparison.Ordinal);
            Assert.False(method == "POST" && answer.Split('\n')[0].Contains(" 302 ", StringComparison.Ordinal), trick);
        }

        Assert.Empty(Directory.GetFiles(garage.Folder, "*.db"));
        Assert.Contains(" 302 ", (await Raw(garage, "POST", "/session-begin/b.loom.yaml")).Split('\n')[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_designs_are_shown_of_what_is_in_the_folder()
    {
        await using var garage = await Garage.Open();
        await garage.Begin("Ann");
        await File.WriteAllTextAsync(Path.Combine(garage.Folder, ".b.loom.yaml.saving"), "half", TestContext.Current.CancellationToken);
        foreach (var name in new[] { ".loomwright.lock", ".b.loom.yaml.saving", RecordFile.FileName, RecordFile.FileName + "-wal" })
        {
            Assert.True(File.Exists(Path.Combine(garage.Folder, name)), name);
            var (status, text) = await garage.Ask(new Uri(garage.Lan, "/check/" + name));
            Assert.Equal(HttpStatusCode.OK, status);
            Assert.Contains("There is no such design here", text, StringComparison.Ordinal);
        }
    }

    // As it is, without what a well-behaved client would tidy up.
    private static async Task<string> Raw(Garage garage, string method, string path)
    {
        const string form = "plan=bike";
        var body = method == "POST" ? $"Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {form.Length}\r\n\r\n{form}" : "\r\n";
        using var socket = new TcpClient();
        await socket.ConnectAsync(Garage.Network, garage.Lan.Port, TestContext.Current.CancellationToken);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.UTF8.GetBytes($"{method} {path} HTTP/1.1\r\nHost: {garage.Lan.Authority}\r\nCookie: {garage.Cookie}\r\nConnection: close\r\n{body}"), TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
    }
}

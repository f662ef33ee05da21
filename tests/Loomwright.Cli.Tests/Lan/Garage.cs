using System.Net;
using Loomwright.Web.Start;

namespace Loomwright.Tests.Lan;

/// <summary>A running program that answers a network address too: 127.0.0.2 stands for it, which is another address than this machine's own name.</summary>
internal sealed class Garage : IAsyncDisposable
{
    public static readonly IPAddress Network = IPAddress.Parse("127.0.0.2");

    private readonly Folder _folder = new();
    private readonly HttpClientHandler _ways = new() { AllowAutoRedirect = false, UseCookies = false };
    private WebHost _host = null!;

    public string Folder => _folder.Path;

    public Uri Here => new(_host.Address);

    public Uri Link => new(_host.PhoneLink!);

    public Uri Lan => new(Link, "/");

    public HttpClient Client { get; private set; } = null!;

    /// <summary>What a phone sends that came in by the link.</summary>
    public string Cookie { get; private set; } = "";

    public static async Task<Garage> Open(string? design = null, IPAddress? network = null)
    {
        var garage = new Garage();
        garage.Client = new HttpClient(garage._ways);
        garage._folder.Write("b.loom.yaml", design ?? Repository.Read(Called.Bench));
        garage._host = await WebHost.Start(garage.Folder, 0, network ?? Network, TestContext.Current.CancellationToken);
        using var answer = await garage.Client.GetAsync(garage.Link, TestContext.Current.CancellationToken);
        garage.Cookie = answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        return garage;
    }

    /// <summary>Asks, as a phone that is in unless told otherwise.</summary>
    public async Task<(HttpStatusCode Status, string Text)> Ask(Uri address, HttpMethod? method = null, string? cookie = "", HttpContent? content = null, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(method ?? HttpMethod.Get, address) { Content = content };
        if ((cookie == "" ? Cookie : cookie) is { } sent)
        {
            request.Headers.Add("Cookie", sent);
        }

        foreach (var (name, value) in headers)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using var answer = await Client.SendAsync(request, TestContext.Current.CancellationToken);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>Begins a session as a phone does; gives its id.</summary>
    public async Task<string> Begin(string who)
    {
        using var form = new FormUrlEncodedContent([new("who", who), new("meter", "red")]);
        Assert.Equal(HttpStatusCode.Redirect, (await Ask(new Uri(Lan, "/session-begin/b.loom.yaml"), HttpMethod.Post, content: form)).Status);
        var page = (await Ask(new Uri(Lan, "/session/b.loom.yaml"))).Text;
        return page.Split("data-session=\"")[1].Split('"')[0];
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        _ways.Dispose();
        await _host.DisposeAsync();
        _folder.Dispose();
    }
}

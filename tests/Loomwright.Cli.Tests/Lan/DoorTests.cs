using System.Net;
using System.Net.Sockets;
using System.Net.WebSockets;
using Loomwright.Web.Start;

namespace Loomwright.Tests.Lan;

public sealed class DoorTests
{
    private static readonly string[] Pages = ["/", "/check/b.loom.yaml", "/try/b.loom.yaml", "/session/b.loom.yaml", "/session-api/x", "/changes/b.loom.yaml", "/served/loom.css", "/_blazor", "/nowhere", "/in", "/in/"];

    [Fact]
    public async Task Without_the_link_nothing_is_shown()
    {
        await using var garage = await Garage.Open();
        foreach (var page in Pages.SkipLast(2))
        {
            var (status, text) = await garage.Ask(new Uri(garage.Lan, page), cookie: null);
            Assert.Equal(HttpStatusCode.Unauthorized, status);
            Assert.DoesNotContain("Kittiwake", text, StringComparison.Ordinal);
        }

        Assert.Equal(401, await Socket(garage, null, null));
        Assert.Equal(101, await Socket(garage, garage.Cookie, Origin(garage)));
        Assert.Contains("Kittiwake", (await garage.Ask(garage.Lan)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_link_or_cookie_is_turned_away_and_guessing_is_slowed_to_nothing()
    {
        await using var garage = await Garage.Open();
        var guess = garage.Link.ToString()[..^1] + (garage.Link.ToString()[^1] == '0' ? '1' : '0');
        foreach (var page in Pages.TakeLast(2))
        {
            Assert.Equal(HttpStatusCode.Unauthorized, (await garage.Ask(new Uri(garage.Lan, page), cookie: null)).Status);
        }

        for (var i = 0; i < 8; i++)
        {
            Assert.Equal(HttpStatusCode.Unauthorized, (await garage.Ask(new Uri(guess), cookie: null)).Status);
            Assert.Equal(HttpStatusCode.Unauthorized, (await garage.Ask(garage.Lan, cookie: garage.Cookie[..^1] + "x")).Status);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, (await garage.Ask(new Uri(guess), cookie: null)).Status);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await garage.Ask(garage.Link, cookie: null)).Status);
        Assert.Equal(HttpStatusCode.OK, (await garage.Ask(garage.Here, cookie: null)).Status);
        Assert.Equal(HttpStatusCode.OK, (await garage.Ask(garage.Lan)).Status);
    }

    [Fact]
    public async Task A_phone_that_was_in_goes_on_after_a_new_start_for_a_day_and_an_old_link_does_not()
    {
        using var folder = new Folder();
        folder.Write("b.loom.yaml", "loomwright: 1\n");
        var (cookie, link) = ("", "");
        var file = Phones.Place(folder.Path)!;
        using var phone = new HttpClient(new HttpClientHandler { UseCookies = false });
        await using (var first = await WebHost.Start(folder.Path, 0, Garage.Network, TestContext.Current.CancellationToken))
        {
            link = new Uri(first.PhoneLink!).PathAndQuery;
            using var answer = await phone.GetAsync(first.PhoneLink, TestContext.Current.CancellationToken);
            cookie = answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        }

        Assert.Equal(HttpStatusCode.OK, await Again("/", cookie));
        Assert.Equal(HttpStatusCode.Unauthorized, await Again(link, ""));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        }

        foreach (var days in new[] { -2, 2 })
        {
            await File.WriteAllTextAsync(file, cookie.Split('=')[1], TestContext.Current.CancellationToken);
            File.SetLastWriteTimeUtc(file, DateTime.UtcNow.AddDays(days));
            Assert.Equal(HttpStatusCode.Unauthorized, await Again("/", cookie));
        }

        async Task<HttpStatusCode> Again(string path, string sent)
        {
            await using var host = await WebHost.Start(folder.Path, 0, Garage.Network, TestContext.Current.CancellationToken);
            using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(new Uri(host.PhoneLink!), path));
            request.Headers.TryAddWithoutValidation("Cookie", sent);
            using var answer = await phone.SendAsync(request, TestContext.Current.CancellationToken);
            return answer.StatusCode;
        }
    }

    [Fact]
    public async Task A_secret_that_comes_along_with_a_folder_opens_nothing()
    {
        using var folder = new Folder();
        folder.Write("b.loom.yaml", "loomwright: 1\n");
        var brought = new string('a', 48);
        File.SetLastWriteTimeUtc(folder.Write(".loomwright.phones", brought), DateTime.UtcNow.AddDays(1000));
        await using var host = await WebHost.Start(folder.Path, 0, Garage.Network, TestContext.Current.CancellationToken);
        using var phone = new HttpClient(new HttpClientHandler { UseCookies = false });
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(new Uri(host.PhoneLink!), "/"));
        request.Headers.TryAddWithoutValidation("Cookie", "loomwright=" + brought);
        using var answer = await phone.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task The_link_gives_a_cookie_no_script_reads_and_no_other_site_sends()
    {
        await using var garage = await Garage.Open();
        using var answer = await garage.Client.GetAsync(garage.Link, TestContext.Current.CancellationToken);
        var cookie = answer.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        var token = garage.Link.Segments[^1];
        Assert.Equal(48, token.Length);
        Assert.DoesNotContain(token, cookie, StringComparison.Ordinal);
        Assert.Equal("same-origin", answer.Headers.GetValues("Referrer-Policy").Single());

        await using var another = await Garage.Open();
        Assert.NotEqual(token, another.Link.Segments[^1]);
        Assert.Equal(HttpStatusCode.Unauthorized, (await another.Ask(another.Lan, cookie: garage.Cookie)).Status);
    }

    [Fact]
    public async Task A_page_from_elsewhere_changes_nothing_and_opens_no_socket()
    {
        await using var garage = await Garage.Open();
        foreach (var origin in new[] { "http://elsewhere.example", "null", "http://127.0.0.2:1", "http://127.0.0.2.elsewhere.example", "https" + Origin(garage)[4..] })
        {
            foreach (var to in new[] { garage.Lan, garage.Here })
            {
                Assert.Equal(HttpStatusCode.Forbidden, (await garage.Ask(new Uri(to, "/session-begin/b.loom.yaml"), HttpMethod.Post, headers: [("Origin", origin)])).Status);
                Assert.Equal(HttpStatusCode.Forbidden, (await garage.Ask(new Uri(to, "/session-api/x"), headers: [("Origin", origin)])).Status);
            }

            Assert.Equal(403, await Socket(garage, garage.Cookie, origin));
        }

        Assert.Equal(HttpStatusCode.Forbidden, (await garage.Ask(new Uri(garage.Here, "/session-api/x"), headers: [("Sec-Fetch-Site", "cross-site"), ("Sec-Fetch-Mode", "no-cors")])).Status);
        Assert.Equal(HttpStatusCode.OK, (await garage.Ask(garage.Here, headers: [("Sec-Fetch-Site", "cross-site"), ("Sec-Fetch-Mode", "navigate")])).Status);
        Assert.Single(Directory.GetFiles(garage.Folder, "*.yaml"));
        Assert.Empty(Directory.GetFiles(garage.Folder, "*.db"));
    }

    [Fact]
    public async Task A_call_by_another_name_gets_no_answer()
    {
        await using var garage = await Garage.Open();
        var port = garage.Lan.Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        foreach (var name in new[] { "elsewhere.example", "elsewhere.example:" + port, "127.0.0.2.elsewhere.example:" + port, "127.0.0.2:1" })
        {
            Assert.Equal(HttpStatusCode.BadRequest, (await garage.Ask(garage.Lan, headers: [("Host", name)])).Status);
            Assert.Equal(HttpStatusCode.BadRequest, (await garage.Ask(garage.Here, headers: [("Host", name)])).Status);
        }

        Assert.Equal(HttpStatusCode.BadRequest, (await garage.Ask(garage.Lan, cookie: null, headers: [("Host", "127.0.0.1:" + port)])).Status);
    }

    [Fact]
    public async Task A_flood_from_one_device_is_cut_off_and_this_machine_goes_on()
    {
        await using var garage = await Garage.Open();
        var address = new Uri(garage.Lan, "/served/theme.js");
        var answers = new List<HttpStatusCode>();
        for (var i = 0; i < 1300; i++)
        {
            answers.Add((await garage.Ask(address)).Status);
        }

        Assert.Equal(HttpStatusCode.OK, answers[0]);
        Assert.Contains(HttpStatusCode.TooManyRequests, answers);
        Assert.Equal(HttpStatusCode.OK, (await garage.Ask(new Uri(garage.Here, "/served/theme.js"))).Status);
    }

    [Fact]
    public async Task Without_being_asked_only_this_machine_is_answered()
    {
        using var folder = new Folder();
        folder.Write("b.loom.yaml", "loomwright: 1\n");
        await using var host = await WebHost.Start(folder.Path, stop: TestContext.Current.CancellationToken);
        Assert.Null(host.PhoneLink);
        using var phone = new TcpClient();
        await Assert.ThrowsAsync<SocketException>(() => phone.ConnectAsync(Garage.Network, new Uri(host.Address).Port, TestContext.Current.CancellationToken).AsTask());
    }

    private static string Origin(Garage garage) => garage.Lan.GetLeftPart(UriPartial.Authority);

    // The answer to opening the web socket the pages use: 101 when it is open.
    private static async Task<int> Socket(Garage garage, string? cookie, string? origin)
    {
        using var socket = new ClientWebSocket();
        socket.Options.CollectHttpResponseDetails = true;
        if (cookie is not null)
        {
            socket.Options.SetRequestHeader("Cookie", cookie);
        }

        if (origin is not null)
        {
            socket.Options.SetRequestHeader("Origin", origin);
        }

        try
        {
            await socket.ConnectAsync(new UriBuilder(garage.Lan) { Scheme = "ws", Path = "/_blazor" }.Uri, TestContext.Current.CancellationToken);
        }
        catch (WebSocketException)
        {
            // The status says why.
        }

        return (int)socket.HttpStatusCode;
    }
}

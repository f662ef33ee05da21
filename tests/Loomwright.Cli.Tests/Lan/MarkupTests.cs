using System.Net;
using System.Net.Http.Headers;
using System.Text;

namespace Loomwright.Tests.Lan;

public sealed class MarkupTests
{
    private const string Evil = "</script><script>alert(1)</script><img src=x onerror=alert(1)>";

    [Fact]
    public async Task Markup_in_names_and_answers_stays_text()
    {
        var design = Repository.Read(Called.Bench)
            .Replace("name: Kittiwake", $"name: '{Evil}'", StringComparison.Ordinal)
            .Replace("stop lamp feed", $"'{Evil} feed'", StringComparison.Ordinal);
        await using var garage = await Garage.Open(design);
        var id = await garage.Begin(Evil);
        using var answers = Json($$"""[{"id":"a","kind":"reading","step":"s0.measure.2","what":"box B- to the clip for battery -","raw":"{{Evil}}","at":"2026-05-04T12:00:00+02:00"}]""");
        Assert.Equal(HttpStatusCode.OK, (await garage.Ask(new Uri(garage.Lan, "/session-api/" + id), HttpMethod.Post, content: answers)).Status);
        foreach (var page in new[] { "/", "/check/b.loom.yaml", "/try/b.loom.yaml", "/bench/b.loom.yaml?stage=2", "/positions/b.loom.yaml", "/picture/b.loom.yaml", "/session/b.loom.yaml", $"/session/{Uri.EscapeDataString(Evil)}", $"/check/{Uri.EscapeDataString(Evil)}" })
        {
            var (status, text) = await garage.Ask(new Uri(garage.Lan, page));
            Assert.Equal(HttpStatusCode.OK, status);
            Assert.Contains("alert(1)", text, StringComparison.Ordinal);
            Assert.DoesNotContain("<script>alert", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("<img src=x", text, StringComparison.OrdinalIgnoreCase);
        }

        using var answer = await garage.Client.GetAsync(garage.Here, TestContext.Current.CancellationToken);
        Assert.Contains("default-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_oversized_upload_is_cut_off()
    {
        await using var garage = await Garage.Open();
        var id = await garage.Begin("Ann");
        using var large = Json($$"""[{"id":"a","kind":"done","step":"s0.fetch.1","raw":"{{new string('x', 300 * 1024)}}","at":"2026-05-04T12:00:00+02:00"}]""");
        HttpStatusCode? status = null;
        try
        {
            status = (await garage.Ask(new Uri(garage.Lan, "/session-api/" + id), HttpMethod.Post, content: large)).Status;
        }
        catch (HttpRequestException)
        {
            // Closed while it was still being sent.
        }

        Assert.True(status is null or HttpStatusCode.RequestEntityTooLarge, status.ToString());
        Assert.Equal("[]", (await garage.Ask(new Uri(garage.Lan, "/session-api/" + id))).Text);
    }

    [Theory]
    [InlineData("", HttpStatusCode.BadRequest)]
    [InlineData("{", HttpStatusCode.BadRequest)]
    [InlineData("""{"id":"a"}""", HttpStatusCode.BadRequest)]
    [InlineData("""[null]""", HttpStatusCode.BadRequest)]
    [InlineData("""[{"id":"","kind":"done","step":"s0.fetch.1","at":"2026-05-04T12:00:00Z"}]""", HttpStatusCode.OK)]
    [InlineData("""[{"id":"a","kind":"other","step":"s0.fetch.1","at":"2026-05-04T12:00:00Z"}]""", HttpStatusCode.BadRequest)]
    [InlineData("""[{"id":"a","kind":"done","at":"2026-05-04T12:00:00Z"}]""", HttpStatusCode.OK)]
    [InlineData("""[{"id":"a","kind":"done","step":"s0.fetch.1","at":"yesterday"}]""", HttpStatusCode.BadRequest)]
    public async Task What_is_no_answer_is_not_kept(string body, HttpStatusCode expected)
    {
        await using var garage = await Garage.Open();
        var id = await garage.Begin("Ann");
        using var content = Json(body);
        Assert.Equal(expected, (await garage.Ask(new Uri(garage.Lan, "/session-api/" + id), HttpMethod.Post, content: content)).Status);
        Assert.Equal("[]", (await garage.Ask(new Uri(garage.Lan, "/session-api/" + id))).Text);
        using var again = Json("[]");
        Assert.Equal(HttpStatusCode.NotFound, (await garage.Ask(new Uri(garage.Lan, "/session-api/no-such"), HttpMethod.Post, content: again)).Status);
    }

    private static StringContent Json(string text) => new(text, Encoding.UTF8, new MediaTypeHeaderValue("application/json"));
}

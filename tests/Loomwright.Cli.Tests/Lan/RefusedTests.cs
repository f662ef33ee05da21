using System.Net;
using Loomwright.Records;

namespace Loomwright.Tests.Lan;

public sealed class RefusedTests
{
    [Fact]
    public async Task A_session_that_cannot_be_kept_is_not_begun_and_the_page_it_leads_to_says_why()
    {
        await using var garage = await Garage.Open();
        await File.WriteAllTextAsync(Path.Combine(garage.Folder, RecordFile.FileName), new string('x', 5000), TestContext.Current.CancellationToken);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(garage.Here, "/session-begin/b.loom.yaml")) { Content = new FormUrlEncodedContent([new("plan", BenchSession.OnTheBike)]) };
        using var answer = await garage.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal((HttpStatusCode.Redirect, "/session/b.loom.yaml?anew=true&refused=true"), (answer.StatusCode, answer.Headers.Location!.ToString()));
        Assert.Contains("Move that file away", (await garage.Ask(new Uri(garage.Here, answer.Headers.Location))).Text, StringComparison.Ordinal);
    }
}

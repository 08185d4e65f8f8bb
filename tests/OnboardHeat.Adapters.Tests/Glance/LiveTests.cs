using System.Net;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Glance.Live;

namespace OnboardHeat.Adapters.Tests.Glance;

public sealed class LiveTests
{
    [Fact]
    public async Task LivePage_GetsTheNewestPictureAtOnce_AndEachNewerOne()
    {
        await using var page = await ServedPage.StartAsync();
        page.Turn(61.25);
        using var reader = new StreamReader(await OpenAsync(page));
        Assert.Contains("61.25", await NextPictureAsync(reader));
        page.Turn(62.5);
        Assert.Contains("62.5", await NextPictureAsync(reader));
    }

    [Fact]
    public async Task SeventeenthPage_IsToldThatAllAreTaken_UntilOneCloses()
    {
        await using var page = await ServedPage.StartAsync();
        page.Turn(50);
        var open = new List<Stream>();
        for (var i = 0; i < LivePages.MostPages; i++)
        {
            open.Add(await OpenAsync(page));
        }

        using var refused = await page.Client.GetAsync("/api/v1/live", HttpCompletionOption.ResponseHeadersRead);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.StatusCode);
        foreach (var stream in open)
        {
            await stream.DisposeAsync();
        }

        HttpStatusCode status;
        do
        {
            page.Turn(50);
            using var answer = await page.Client.GetAsync("/api/v1/live", HttpCompletionOption.ResponseHeadersRead);
            status = answer.StatusCode;
        }
        while (status != HttpStatusCode.OK);
    }

    [Fact]
    public async Task Stopping_WithLivePagesOpen_EndsThem()
    {
        var page = await ServedPage.StartAsync();
        page.Turn(50);
        var reader = new StreamReader(await OpenAsync(page));
        await NextPictureAsync(reader);
        await page.Server.StopAsync();
        await Assert.ThrowsAnyAsync<Exception>(async () =>
        {
            while (await reader.ReadLineAsync() is not null)
            {
            }

            throw new EndOfStreamException();
        });
        await page.DisposeAsync();
    }

    [Fact]
    public async Task PageThatComesWhileTheLoopHangs_IsToldHowOldThePictureIs()
    {
        var time = new FakeTimeProvider();
        await using var page = await ServedPage.StartAsync(time: time);
        page.Turn(61.25);
        using var first = new StreamReader(await OpenAsync(page));
        await NextPictureAsync(first);
        time.Advance(TimeSpan.FromSeconds(41));
        using var late = new StreamReader(await OpenAsync(page));
        await NextPictureAsync(late);
        string? line;
        while ((line = await late.ReadLineAsync()) != "event: beat")
        {
            Assert.NotNull(line);
        }

        Assert.Equal("""data: {"pictureAgeS":41.0,"overdueS":15}""", await late.ReadLineAsync());
    }

    private static async Task<Stream> OpenAsync(ServedPage page)
    {
        var answer = await page.Client.GetAsync("/api/v1/live", HttpCompletionOption.ResponseHeadersRead);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStreamAsync();
    }

    private static async Task<string> NextPictureAsync(StreamReader reader)
    {
        while (await reader.ReadLineAsync() is { } line)
        {
            if (line.StartsWith("data: {\"v\"", StringComparison.Ordinal))
            {
                return line;
            }
        }

        throw new EndOfStreamException("The stream ended before a picture came.");
    }
}

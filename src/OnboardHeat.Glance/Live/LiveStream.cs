using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace OnboardHeat.Glance.Live;

/// <summary>
/// One page's stream of server-sent events: the newest picture at once, each newer one, and a beat at least every three
/// seconds so that the page can tell silence from calm. A beat carries the age of the newest picture: a loop that hangs
/// behind a server that lives is seen too. A page that takes longer than five seconds for one event is dropped.
/// </summary>
internal sealed class LiveStream(
    LivePages pages, TimeSpan longestScanPeriod, TimeProvider time, CancellationToken stopping)
{
    // The page calls 8 s of silence a lost connection: two beats may be late before it does.
    private static readonly TimeSpan s_beat = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan s_slowest = TimeSpan.FromSeconds(5);

    // A scan that takes a failing bus's time is not overdue yet; half a period more is.
    private const double OverduePeriods = 1.5, LeastOverdueS = 10;

    private static readonly byte[] s_head = Encoding.UTF8.GetBytes("event: picture\ndata: ");
    private static readonly byte[] s_tail = "\n\n"u8.ToArray();

    public async Task ServeAsync(HttpContext context)
    {
        if (!pages.TryEnter())
        {
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            await context.Response.WriteAsync("All live pages are taken: close one.", context.RequestAborted);
            return;
        }

        try
        {
            context.Response.ContentType = "text/event-stream";
            context.Response.Headers.CacheControl = "no-store";
            context.Features.Get<IHttpResponseBodyFeature>()?.DisableBuffering();
            using var ended = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, stopping);
            await StreamAsync(context, ended.Token);
        }
        catch (OperationCanceledException)
        {
            context.Abort();
        }
        finally
        {
            pages.Leave();
        }
    }

    private async Task StreamAsync(HttpContext context, CancellationToken ended)
    {
        var isFirst = true;
        while (true)
        {
            var newer = pages.Newer;
            if (pages.Latest is { } picture)
            {
                await SendAsync(context, ended, s_head, picture, s_tail);
            }

            if (isFirst || pages.Latest is null)
            {
                // A page that comes while the loop hangs gets an old picture, and must be told so at once.
                await SendAsync(context, ended, Beat());
                isFirst = false;
            }

            while (!newer.IsCompleted)
            {
                var beat = Task.Delay(s_beat, time, ended);
                if (await Task.WhenAny(newer, beat) == beat)
                {
                    await beat;
                    await SendAsync(context, ended, Beat());
                }
            }
        }
    }

    private byte[] Beat()
    {
        var age = pages.Age is { } known ? known.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture) : "null";
        var overdue = Math.Max(LeastOverdueS, longestScanPeriod.TotalSeconds * OverduePeriods)
            .ToString("0", CultureInfo.InvariantCulture);
        return Encoding.UTF8.GetBytes($"event: beat\ndata: {{\"pictureAgeS\":{age},\"overdueS\":{overdue}}}\n\n");
    }

    private async Task SendAsync(HttpContext context, CancellationToken ended, params IReadOnlyList<byte[]> parts)
    {
        using var slow = new CancellationTokenSource(s_slowest, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(slow.Token, ended);
        foreach (var part in parts)
        {
            await context.Response.Body.WriteAsync(part, either.Token);
        }

        await context.Response.Body.FlushAsync(either.Token);
    }
}

using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace OnboardHeat.Glance.Live;

/// <summary>
/// One page's stream of server-sent events: the newest picture at once, each newer one, and a beat at least every five seconds so that
/// the page can tell silence from calm. A page that takes longer than that for one event is dropped.
/// </summary>
internal sealed class LiveStream(LivePages pages, TimeProvider time, CancellationToken stopping)
{
    private static readonly TimeSpan s_beat = TimeSpan.FromSeconds(4);
    private static readonly TimeSpan s_slowest = TimeSpan.FromSeconds(5);
    private static readonly byte[] s_beatBytes = Encoding.UTF8.GetBytes("event: beat\ndata: {}\n\n");
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
        while (true)
        {
            var newer = pages.Newer;
            await SendAsync(context, pages.Latest, ended);
            while (!newer.IsCompleted)
            {
                var beat = Task.Delay(s_beat, time, ended);
                if (await Task.WhenAny(newer, beat) == beat)
                {
                    await beat;
                    await SendAsync(context, null, ended);
                }
            }
        }
    }

    private async Task SendAsync(HttpContext context, byte[]? picture, CancellationToken ended)
    {
        using var slow = new CancellationTokenSource(s_slowest, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(slow.Token, ended);
        var body = context.Response.Body;
        if (picture is null)
        {
            await body.WriteAsync(s_beatBytes, either.Token);
        }
        else
        {
            await body.WriteAsync(s_head, either.Token);
            await body.WriteAsync(picture, either.Token);
            await body.WriteAsync(s_tail, either.Token);
        }

        await body.FlushAsync(either.Token);
    }
}

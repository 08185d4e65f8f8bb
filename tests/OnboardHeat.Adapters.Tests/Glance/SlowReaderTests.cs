using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Glance.Live;

namespace OnboardHeat.Adapters.Tests.Glance;

public sealed class SlowReaderTests
{
    [Fact]
    public async Task PageThatReadsNothing_IsDroppedAfterFiveSeconds_AndGivesItsPlaceBack()
    {
        var time = new FakeTimeProvider();
        var pages = new LivePages(time);
        pages.Show("{}"u8.ToArray());
        using var body = new StuckStream();
        var context = new DefaultHttpContext { Response = { Body = body } };
        var serving = new LiveStream(pages, TimeSpan.FromSeconds(10), time, CancellationToken.None).ServeAsync(context);
        await body.IsAsked;
        time.Advance(TimeSpan.FromSeconds(4));
        Assert.False(serving.IsCompleted);
        Assert.Equal(1, pages.Open);
        time.Advance(TimeSpan.FromSeconds(2));
        await serving;
        Assert.Equal(0, pages.Open);
    }
}

using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Adapters.Tests.Review;

public sealed class OverlayTests
{
    // The van of the rig: 24 litres and a vessel of 2 + 0.14 kg a litre; 4150 J/K a litre and 500 J/(kg K), as Overlay
    // takes them.
    private const double HeatJPerK = (24 * 4150) + (5.36 * 500);

    [Fact]
    public async Task TwoNightsOfOneTank_LieOverEachOtherOnceTheirStartsAreAlike()
    {
        // GIVEN a night from 70 in 18 and one from 50 in 6 degrees, both by Newton's law of cooling with 0.8 W/K.
        var record = new HandRecord().Run(1, 0, 60);
        Cool(record, 0, 70, 18);
        Cool(record, 100_000, 50, 6);
        SomeJourney.On(record, SomeJourney.Night(1, 0, 8, 0.8));
        SomeJourney.On(record, SomeJourney.Night(1, 100_000, 8, 0.8));

        // WHEN they are laid over each other
        Assert.True(ReviewSpan.TryParse("1/0/28800", out var first));
        Assert.True(ReviewSpan.TryParse("1/100000/128800", out var second));
        var overlay = (await Overlay.ReadAsync(first, second, record, RecorderRig.Van, CancellationToken.None))!;

        // THEN the second stands on the start and surroundings of the first and meets it to the end.
        Assert.Equal(70, overlay.StartCelsius, 0.05);
        Assert.Equal(18, overlay.SurroundingsCelsius!.Value, 0.01);
        Assert.InRange(overlay.Second.Points[^1].WaterCelsius, 35, 45);
        Assert.Equal(overlay.First.PutCelsius[^1], overlay.Second.PutCelsius[^1], 0.1);
        Assert.Equal(0.8, overlay.Second.LossWPerK, 1e-9);
    }

    [Fact]
    public async Task SpanBetweenTwoDates_IsReadByTheRunsOwnDates()
    {
        var record = new HandRecord().Run(1, 0, 60);
        Cool(record, 0, 70, 18);
        Assert.True(ReviewSpan.TryParse("2026-05-23T07:00:00Z/2026-05-23T09:00:00Z", out var span));
        var points = 0;
        await foreach (var (atS, scan) in span.ReadAsync(record, CancellationToken.None))
        {
            Assert.Equal(scan.Elapsed.TotalSeconds - 3600, atS, 1e-6);
            points++;
        }

        Assert.Equal(121, points);
    }

    [Fact]
    public async Task NothingOnRecord_IsNull()
    {
        Assert.True(ReviewSpan.TryParse("1/0/3600", out var span));
        Assert.Null(await Overlay.ReadAsync(span, span, new HandRecord().Run(1, 0, 2), RecorderRig.Van,
            CancellationToken.None));
    }

    [Theory]
    [InlineData("")]
    [InlineData("1/5/5")]
    [InlineData("1/9/5")]
    [InlineData("0x1/0/5")]
    [InlineData("1/-5/5")]
    [InlineData("1/0/1e99")]
    [InlineData("1/NaN/5")]
    [InlineData("2026-05-23/2026-05-24")]
    [InlineData("2026-05-23T09:00:00Z/2026-05-23T07:00:00Z")]
    [InlineData("2020-05-23T09:00:00Z/2026-05-23T07:00:00Z")]
    public void WhatIsNoSpan_IsRefused(string text) => Assert.False(ReviewSpan.TryParse(text, out _));

    private static void Cool(HandRecord record, double fromS, double startCelsius, double aroundCelsius)
    {
        for (var s = 0; s <= 28_800; s += 60)
        {
            record.Scan(1, fromS + s, aroundCelsius
                + ((startCelsius - aroundCelsius) * Math.Exp(-0.8 * s / HeatJPerK)), aroundCelsius);
        }
    }
}

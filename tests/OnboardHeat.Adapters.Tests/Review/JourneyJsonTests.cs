using OnboardHeat.Core.Journeys;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Adapters.Tests.Review;

public sealed class JourneyJsonTests
{
    [Fact]
    public void Journey_ComesBackAsItWasKept()
    {
        foreach (var journey in new[] { SomeJourney.Night(4, 300, 9, 0.8123), SomeJourney.Drive(4, 40_000, 43_600) })
        {
            var back = JourneyJson.Read(JourneyJson.EventOf(journey, TimeSpan.FromHours(13)))!;
            Assert.Equal(JourneyJson.FormOf(journey).ToString(), JourneyJson.FormOf(back).ToString());
            Assert.Equal(journey.BySource, back.BySource);
            Assert.Equal(journey.OverRating, back.OverRating);
            Assert.Equal(journey.LossWPerK, back.LossWPerK);
        }
    }

    [Theory]
    [InlineData("alarm", "heating", "{}")]
    [InlineData("journey", "heating", "{")]
    [InlineData("journey", "heating", "{}")]
    [InlineData("journey", "flight", """
        {"type":"flight","run":1,"from":0,"to":1,"startCelsius":1,"endCelsius":1,"peakCelsius":1,"gainedKWh":0,"meanWatts":0,
         "endedBy":"engine"}
        """)]
    public void WhatIsNoJourney_IsNull(string kind, string name, string text) =>
        Assert.Null(JourneyJson.Read(new RecordedEvent(1, TimeSpan.Zero, null, kind, name, "", text)));

    [Fact]
    public void RunOfTheRecord_CountsNotThatOfTheText()
    {
        var kept = JourneyJson.EventOf(SomeJourney.Drive(1, 0, 600), TimeSpan.FromSeconds(660));
        Assert.Equal(7, JourneyJson.Read(kept with { Run = 7 })!.Run);
        Assert.Equal(JourneyType.Heating, JourneyJson.Read(kept)!.Type);
    }
}

using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Checking;
using OnboardHeat.Engine.Checking;

namespace OnboardHeat.Daemon.Tests.Checking;

public sealed class CapabilitiesTests
{
    [Fact]
    public void OneTankProbe_JudgesTheTankAndNotTheCircuit()
    {
        var can = Of([Channel.TankTop]);
        Assert.Contains("tank-over-temperature", can.Judged);
        Assert.DoesNotContain("coolant-loss", can.Judged);
        Assert.Contains("flow with tray", Needs(can, "coolant-loss"));
    }

    [Fact]
    public void WhatOneMoreIsSaidToAdd_IsJudgedOnceItIsFitted()
    {
        // The claim is about the watchers themselves, so it is tried on them, place by place.
        Channel[] fitted = [Channel.TankTop, Channel.Flow];
        foreach (var addition in Of(fitted).Additions)
        {
            var more = Channels.TryParse(addition.Place, out var channel)
                ? Of([.. fitted, channel])
                : Of(
                    fitted, Signals.TryParse(addition.Place, out var signal)
                        ? signal
                        : throw new InvalidOperationException(addition.Place));
            Assert.All(addition.Watchers, watcher => Assert.Contains(watcher, more.Judged));
        }
    }

    [Fact]
    public void Tray_WouldAddCoolantLossToAVanWithFlow() => Assert.Contains(
        Of([Channel.TankTop, Channel.Flow]).Additions, addition =>
            addition.Place == "tray" && addition.Watchers.Contains("coolant-loss"));

    [Fact]
    public void EverythingFitted_LacksOnlyWhatMustBeLearnt()
    {
        var can = Of(Channels.All.ToArray(), Signals.All.ToArray());
        Assert.Empty(can.Additions);
        Assert.Equal(["weak-heating"], can.Lacks.Select(lack => lack.Watcher));
        Assert.Empty(can.Lacks[0].Needs);
    }

    [Fact]
    public void EveryPlace_HasWordsForWhatItAdds() => Assert.All(
        Of([]).Additions, addition => Assert.NotEmpty(PlaceWords.GainOf(addition.Place)));

    private static IReadOnlyList<string> Needs(Capabilities can, string watcher) =>
        can.Lacks.Single(lack => lack.Watcher == watcher).Needs;

    private static Capabilities Of(IReadOnlyList<Channel> channels, params IReadOnlyList<Signal> signals) =>
        new(new VanDescription { Fitted = new FittedSet(channels, signals) }, LearntVan.Nothing);
}

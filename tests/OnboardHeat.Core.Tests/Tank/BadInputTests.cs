using CsCheck;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Shower;

namespace OnboardHeat.Core.Tests.Tank;

public sealed class BadInputTests
{
    private static readonly Channel[] s_channels =
        [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings];

    [Fact]
    public void AnyReadingsAndGaps_NeverGiveNaNOrNegativeTime()
    {
        var scans = Gen.Select(
            Gen.Double[1, 4000], Gen.Double[-30, 120].Array[5], Gen.Bool, Gen.Bool, Gen.Int[0, 31]).Array[5, 60];
        scans.Sample(
            rows =>
            {
                var (monitor, elapsedS) = (MonitorFor(new ShowerDescription()), 0.0);
                foreach (var (stepS, celsius, isRunning, isElementOn, missing) in rows)
                {
                    elapsedS += stepS;
                    var scan = ScanAt(elapsedS, celsius, missing);
                    scan[Signal.EngineRunning] = isRunning;
                    scan[Signal.ElementOn] = isElementOn;
                    monitor.Observe(scan);
                    AssertSound(monitor.Forecast());
                }
            },
            seed: "0N0XIzNsQ0O2", iter: 60);
    }

    [Theory]
    [InlineData(0.1, 39, 12)]
    [InlineData(30, 39, 12)]
    [InlineData(6, 39, 40)]
    [InlineData(6, 60, 12)]
    public void OddShowers_StaySound(double flow, double mixed, double cold)
    {
        var monitor = MonitorFor(new ShowerDescription { FlowLitresPerMinute = flow, MixedCelsius = mixed }, cold);
        for (var s = 0; s <= 600; s += 10)
        {
            monitor.Observe(ScanAt(s, [65, 64, 60, 58, 15], 0));
        }

        AssertSound(monitor.Forecast());
    }

    [Fact]
    public void DrainedTank_GivesNoEnergyAndNoMinutes_FilledOneAnswersAgain()
    {
        var monitor = MonitorFor(new ShowerDescription());
        for (var s = 0; s <= 300; s += 10)
        {
            monitor.Observe(ScanAt(s, [65, 64, 60, 58, 15], 0));
        }

        Assert.NotNull(monitor.Forecast().ShowerMinutes);
        var drained = ScanAt(310, [20, 20, 20, 20, 15], 0);
        drained.Actions = [new PersonAction(ActionKind.Drained, "", "")];
        monitor.Observe(drained);
        Assert.Null(monitor.Forecast().ShowerMinutes);
        Assert.Null(monitor.Forecast().StoredEnergyKWh);
        var filled = ScanAt(320, [12, 12, 20, 20, 15], 0);
        filled.Actions = [new PersonAction(ActionKind.Filled, "", "")];
        monitor.Observe(filled);
        for (var s = 330; s <= 400; s += 10)
        {
            monitor.Observe(ScanAt(s, [12, 12, 20, 20, 15], 0));
        }

        Assert.Equal(0, monitor.Forecast().ShowerMinutes);
    }

    [Fact]
    public void ElementOnInADrainedTank_IsToldAtOnce()
    {
        var monitor = MonitorFor(new ShowerDescription());
        var raised = false;
        for (var s = 0; s <= 20; s += 2)
        {
            var scan = ScanAt(s, [20, 20, 20, 20, 15], 0);
            scan.Actions = s == 0 ? [new PersonAction(ActionKind.Drained, "", "")] : [];
            scan[Signal.ElementOn] = s >= 10;
            raised |= monitor.Observe(scan).Changes.Any(
                change => change is { IsRaised: true, Definition.Name: "element-dry" });
        }

        Assert.True(raised);
    }

    private static Monitor MonitorFor(ShowerDescription shower, double cold = 12) => new(
        new VanDescription
        {
            Fitted = new FittedSet(s_channels, [Signal.EngineRunning, Signal.ElementOn]),
            Shower = shower,
            Tank = new Core.Tank.TankDescription { ColdSupplyCelsius = cold },
        },
        KeptState.Fresh,
        ForecastTiming.WhenAsked);

    private static Scan ScanAt(double elapsedS, double[] celsius, int missing)
    {
        var scan = new Scan { Elapsed = TimeSpan.FromSeconds(elapsedS) };
        for (var i = 0; i < s_channels.Length; i++)
        {
            if ((missing & (1 << i)) == 0)
            {
                scan[s_channels[i]] = Reading.Of(celsius[i]);
            }
        }

        return scan;
    }

    private static void AssertSound(Forecast forecast)
    {
        double?[] all =
        [
            forecast.StoredEnergyKWh, forecast.StoredEnergyDeviationKWh, forecast.ShowerMinutes,
            forecast.ShowerMinutesLow, forecast.ShowerMinutesHigh,
            forecast.ReadyInS, forecast.UsableForS, forecast.FrostInS, forecast.PeakCelsius, forecast.HeatingWatts,
            forecast.LossCoefficientWPerK,
        ];
        Assert.All(all, value => Assert.True(value is null || double.IsFinite(value.Value)));
        double?[] times = [
            forecast.ShowerMinutes, forecast.ShowerMinutesLow, forecast.ReadyInS, forecast.UsableForS,
            forecast.FrostInS, forecast.DriveMinutesNeeded];
        Assert.All(times, value => Assert.True(value is null or >= 0));
        Assert.True(forecast.ShowerMinutesLow is null || forecast.ShowerMinutesLow <= forecast.ShowerMinutesHigh);
    }
}

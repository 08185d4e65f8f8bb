using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine;

namespace OnboardHeat.Adapters.Tests.Support;

/// <summary>Turns made by hand: an evening on a pass, the tank warm. A test states only what it is about.</summary>
internal static class SomeTurn
{
    public static readonly DateTimeOffset Start = new(2026, 5, 28, 16, 0, 0, TimeSpan.Zero);

    public static FittedSet Fitted { get; } = new(
        [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Tray], [Signal.EngineRunning, Signal.TrayWet]);

    public static Turn At(
        double elapsedS, double showerMinutes = 5.4, bool? engineRuns = true, double topCelsius = 61.3,
        params AlarmSnapshot[] alarms)
    {
        var elapsed = TimeSpan.FromSeconds(elapsedS);
        var scan = new Scan { Run = 3, Elapsed = elapsed, Utc = Start + elapsed, IsUtcTrusted = true };
        scan[Channel.TankTop] = Reading.Of(topCelsius);
        scan[Signal.EngineRunning] = engineRuns;
        var readings = Enumerable.Repeat(
            new ScreenedReading(0, ReadingFault.Missing, double.PositiveInfinity), Channels.Count).ToArray();
        readings[(int)Channel.TankTop] = new ScreenedReading(topCelsius, ReadingFault.None, 0);
        readings[(int)Channel.Flow] = new ScreenedReading(82, ReadingFault.BadCrc, 4);
        return new Turn(scan, new Picture
        {
            Run = scan.Run,
            Elapsed = elapsed,
            Utc = scan.Utc,
            IsUtcTrusted = true,
            Readings = readings,
            Tank = new TankEstimate
            {
                IsKnown = true,
                LayerCelsius = [48.5, 55.25, topCelsius],
                TopCelsius = new Estimate(topCelsius, 0.4, TimeSpan.Zero, 9),
                MeanCelsius = new Estimate(55.0, 0.6, TimeSpan.Zero, 9),
                BottomCelsius = new Estimate(48.5, 0.8, TimeSpan.Zero, 9),
            },
            Circuit = new CircuitEstimate { IsEngineRunning = engineRuns, IsCirculating = engineRuns },
            Forecast = new Forecast
            {
                ElapsedS = elapsedS,
                StoredEnergyKWh = 1.23456,
                ShowerMinutes = showerMinutes,
                ShowerMinutesLow = 0.9 * showerMinutes,
                ShowerMinutesHigh = 1.1 * showerMinutes,
                MixedLitres = 6 * showerMinutes,
                Ready = ReadyKind.At,
                ReadyInS = 720,
                Until = UntilKind.BeyondSevenDays,
                HeatingWatts = 1430,
                LossCoefficientWPerK = 0.71,
            },
            Alarms = alarms,
            Changes = [],
        });
    }

    public static AlarmSnapshot Alarm(
        AlarmKind kind, AlarmState state = AlarmState.Unacknowledged, string subject = "", bool isPresent = true,
        double sinceS = 100) =>
        new(AlarmTable.Of(kind), subject, state, isPresent, sinceS, "tray rose 9 K in 8 s while the engine ran", [
            "Stop where it is safe to stop.", "Engine off."]);
}

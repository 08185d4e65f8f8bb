using CsCheck;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tests.Screening;

/// <summary>What holds for any readings whatever. A failing case prints its seed.</summary>
public sealed class ScreenPropertyTests
{
    private static readonly Gen<Reading> s_reading = Gen.Frequency(
        (8, Gen.Double[-60, 130].Select(Reading.Of)),
        (2, Pick(85.0, 0.0, -0.0625, 127.9375).Select(Reading.Of)),
        (1, Pick(double.NaN, double.PositiveInfinity, 1e308, -1e308).Select(v => new Reading(v, ReadingFault.None))),
        (2, Gen.Enum<ReadingFault>().Where(f => f != ReadingFault.None).Select(Reading.Failed)));

    private static readonly Gen<(double StepS, Reading[] Readings, bool? Engine)> s_scan = Gen.Select(
        Gen.Double[0.1, 60], s_reading.Array[Channels.Count], Pick<bool?>(null, true, false));

    [Fact]
    public void WhateverComes_OnlyFiniteValuesInThePlacesRangeAreBelieved_AndAgesAreNeverNegative() =>
        s_scan.Array[1, 60].Sample(
            scans =>
            {
                var screen = new ReadingScreen(new FittedSet(Channels.All.ToArray(), Signals.All.ToArray()));
                var scan = new Scan();
                foreach (var (stepS, readings, engine) in scans)
                {
                    Fill(scan, stepS, readings, engine);
                    var screened = screen.Observe(scan);
                    foreach (var channel in Channels.All)
                    {
                        var reading = screened[channel];
                        if (!double.IsFinite(reading.Value) || !(reading.AgeS >= 0)
                            || reading.IsGood != (reading.AgeS == 0 && reading.Fault == 0)
                            || (reading.IsGood && reading.Value != scan[channel].Value)
                            || (reading.IsKnown && reading.AgeS < double.PositiveInfinity
                            && reading.Value is < -55 or > 150))
                        {
                            return false;
                        }
                    }
                }

                return true;
            },
            iter: 2_000);

    [Fact]
    public void TheSameScans_AreJudgedTheSame() =>
        s_scan.Array[1, 60].Sample(
            scans =>
            {
                var fitted = new FittedSet(Channels.All.ToArray(), Signals.All.ToArray());
                var (one, two, scan) = (new ReadingScreen(fitted), new ReadingScreen(fitted), new Scan());
                foreach (var (stepS, readings, engine) in scans)
                {
                    Fill(scan, stepS, readings, engine);
                    var (a, b) = (one.Observe(scan), two.Observe(scan));
                    foreach (var channel in Channels.All)
                    {
                        if (a[channel] != b[channel])
                        {
                            return false;
                        }
                    }
                }

                return true;
            },
            iter: 500);

    private static Gen<T> Pick<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static void Fill(Scan scan, double stepS, Reading[] readings, bool? engine)
    {
        scan.Elapsed += TimeSpan.FromSeconds(stepS);
        scan[Signal.EngineRunning] = engine;
        foreach (var channel in Channels.All)
        {
            scan[channel] = readings[(int)channel];
        }
    }
}

using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Adapters.Tests.History;

/// <summary>
/// Scans of a drive over a pass, with the noise and steps of real probes; the same for the same seed.
/// </summary>
internal sealed class SomeScans(int seed)
{
    private const double StepK = 0.0625;

    private static readonly Channel[] s_fitted =
        [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings, Channel.Tray];

    private readonly Random _random = new(seed);

    public static DateTimeOffset Start { get; } = new(2026, 5, 28, 6, 0, 0, TimeSpan.Zero);

    /// <summary>
    /// A scan every so many seconds; driving warms tank and lines, noise moves a step up or down now and then.
    /// </summary>
    public IEnumerable<Scan> Drive(int run, int count, double periodS = 2, double fromS = 0,
        DateTimeOffset? start = null, bool isTrusted = true)
    {
        for (var i = 0; i < count; i++)
        {
            var elapsedS = fromS + (i * periodS);
            var elapsed = TimeSpan.FromMilliseconds(Math.Round(elapsedS * 1000) + _random.Next(4));
            var scan = new Scan
            {
                Run = run,
                Elapsed = elapsed,
                Utc = (start ?? Start) + elapsed,
                IsUtcTrusted = isTrusted,
            };
            foreach (var channel in s_fitted)
            {
                scan[channel] = Reading.Of(Math.Round(Celsius(channel, elapsedS) / StepK) * StepK);
            }

            scan[Signal.EngineRunning] = true;
            yield return scan;
        }
    }

    /// <summary>Anything a scan can hold: odd values, faults, labels, actions.</summary>
    public Scan Odd(int run, TimeSpan elapsed)
    {
        var scan = new Scan { Run = run, Elapsed = elapsed, IsUtcTrusted = _random.Next(2) == 0 };
        if (_random.Next(4) > 0)
        {
            var offset = TimeSpan.FromMinutes(_random.Next(-8, 9) * 15);
            scan.Utc = new DateTimeOffset(
                _random.NextInt64(1, DateTime.MaxValue.Ticks - TimeSpan.TicksPerDay) / 10000 * 10000, TimeSpan.Zero)
                .AddDays(1).ToOffset(offset);
        }

        foreach (var channel in Channels.All)
        {
            scan[channel] = _random.Next(6) switch
            {
                0 => Reading.Failed((ReadingFault)_random.Next(1, 10)),
                1 => Reading.Of((_random.NextDouble() * 200) - 50),
                2 => Reading.Of(_random.NextDouble() * Math.Pow(10, _random.Next(-300, 300))),
                3 => Reading.Of(-0.0),
                _ => Reading.Of((Math.Round(_random.NextDouble() * 1600) * StepK) + 0.3),
            };
        }

        foreach (var signal in Signals.All)
        {
            scan[signal] = _random.Next(3) switch { 0 => null, 1 => true, _ => false };
        }

        if (_random.Next(5) == 0)
        {
            scan.Actions = [new PersonAction(ActionKind.Note, "", "Pass erreicht, 2'107 m: =kalt"),
                new PersonAction(ActionKind.Drained, "", "")];
            scan.House = new HouseReport("full", "", true);
        }

        return scan;
    }

    private double Celsius(Channel channel, double elapsedS)
    {
        var noiseK = (_random.NextDouble() - 0.5) * 0.12;
        var warmth = 1 - Math.Exp(-elapsedS / 1800);
        return noiseK + channel switch
        {
            Channel.TankTop => 15 + (45 * warmth),
            Channel.TankBottom => 13 + (41 * warmth),
            Channel.Flow => 20 + (65 * (1 - Math.Exp(-elapsedS / 400))) + (3 * Math.Sin(elapsedS / 90)),
            Channel.Return => 19 + (58 * (1 - Math.Exp(-elapsedS / 450))) + (2 * Math.Sin(elapsedS / 95)),
            Channel.Surroundings => 11 + (4 * warmth),
            _ => 9 + (3 * warmth),
        };
    }
}

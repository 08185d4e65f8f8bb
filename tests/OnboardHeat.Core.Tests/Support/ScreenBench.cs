using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tests.Support;

/// <summary>A reading screen on the bench: readings are set, and a scan is taken every few seconds.</summary>
internal sealed class ScreenBench
{
    private readonly ReadingScreen _screen;
    private readonly Channel[] _fitted;
    private readonly Scan _scan = new();

    public ScreenBench(params Channel[] fitted)
    {
        _fitted = fitted;
        _screen = new ReadingScreen(new FittedSet(fitted, [Signal.EngineRunning]));
    }

    public double ElapsedS { get; private set; } = -1;

    public double PeriodS { get; init; } = 2;

    public bool? Engine { get; set; }

    /// <summary>A scan one period later; what is not given has no reading.</summary>
    public ScreenedScan Take(params (Channel Channel, double Celsius)[] readings)
    {
        ElapsedS = ElapsedS < 0 ? 0 : ElapsedS + PeriodS;
        _scan.Clear();
        _scan.Elapsed = TimeSpan.FromSeconds(ElapsedS);
        _scan[Signal.EngineRunning] = Engine;
        foreach (var (channel, celsius) in readings)
        {
            _scan[channel] = Reading.Of(Math.Round(celsius * 16) / 16);
        }

        return _screen.Observe(_scan);
    }

    /// <summary>A scan in which one channel fails and the others give nothing.</summary>
    public ScreenedScan Fail(Channel channel, ReadingFault fault)
    {
        ElapsedS += PeriodS;
        _scan.Clear();
        _scan.Elapsed = TimeSpan.FromSeconds(ElapsedS);
        _scan[channel] = Reading.Failed(fault);
        return _screen.Observe(_scan);
    }

    /// <summary>The same for a single fitted channel: the fault of each of a row of readings.</summary>
    public IReadOnlyList<ReadingFault> FaultsOf(params double[] celsius) =>
        [.. celsius.Select(value => Take((_fitted[0], value))[_fitted[0]].Fault)];
}

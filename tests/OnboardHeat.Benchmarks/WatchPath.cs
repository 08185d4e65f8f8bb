using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Benchmarks;

/// <summary>
/// Screening, watching and the alarm board as the monitor joins them, without the estimates: what every scan costs at
/// the least.
/// </summary>
internal sealed class WatchPath
{
    private readonly ReadingScreen _screen;
    private readonly AlarmBoard _board = new();
    private readonly CircuitEstimator _circuit;
    private readonly IWatcher[] _watchers;
    private readonly WatchInput _input;

    public WatchPath(VanDescription van)
    {
        _screen = new ReadingScreen(van.Fitted);
        _circuit = new CircuitEstimator(van, new LearntCircuit());
        _watchers = Watchers.All(van, _board, LearntVan.Nothing);
        _input = new WatchInput
        {
            Van = van,
            Scan = _screen.Observe(new Scan()),
            Tank = TankEstimate.Unknown,
            Loop = _circuit.Loop,
            Test = _circuit.Test,
            Circuit = CircuitEstimate.Unknown with { IsEngineRunning = true, IsCirculating = true },
        };
    }

    /// <summary>One scan; gives the number of alarms that came or went.</summary>
    public int Observe(Scan scan)
    {
        var screened = _screen.Observe(scan);
        _circuit.Observe(screened, TankEstimate.Unknown);
        _input.Scan = screened;
        foreach (var watcher in _watchers)
        {
            watcher.Observe(_input);
        }

        return _board.Close(screened.ElapsedS).Count;
    }
}

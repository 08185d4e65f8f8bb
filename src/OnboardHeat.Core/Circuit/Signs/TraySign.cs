using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// Hot liquid in the tray. It warms at once where the spray reaches it. Hot domestic water does the same, so the tray speaks loudest when
/// it grows hotter than any domestic water in the tank, and never decides alone.
/// </summary>
internal sealed class TraySign : ICircuitSign
{
    private const double WindowS = 20;

    /// <summary>An innocent tray moves some tenths of a kelvin in the window.</summary>
    private const double OrdinaryRiseK = 1, NatsPerK = 1.5, LimitNats = 6.5, HotterThanTankNats = 4;

    private double _riseK, _riseS;

    public string Name => "tray-rise";

    public bool IsHealthy { get; private set; }

    public double StoppedNats { get; private set; }

    public double LeavingNats => StoppedNats;

    public double RiseK => _riseK;

    public void Observe(Loop loop)
    {
        StoppedNats = 0;
        _riseK = 0;
        var window = loop.Window(WindowS);
        IsHealthy = loop.IsFresh(loop.Tray) && loop.Tray.TryRange(loop.NowS - window, loop.NowS, out var lowest, out _);
        if (!IsHealthy)
        {
            return;
        }

        loop.Tray.TryRange(loop.NowS - window, loop.NowS, out lowest, out _);
        _riseK = loop.Tray.Newest - lowest;
        _riseS = window;
        var warmAirK = loop.IsFresh(loop.Air) && loop.Air.TryRange(loop.NowS - window, loop.NowS, out var coolest, out _)
            ? Math.Max(0, loop.Air.Newest - coolest)
            : 0;
        if (loop.HottestCelsius - lowest > 20)
        {
            StoppedNats = Math.Clamp((_riseK - warmAirK - OrdinaryRiseK) * NatsPerK, 0, LimitNats);
            if (StoppedNats > 3 && loop.IsFresh(loop.Bottom) && loop.Tray.Newest > Math.Max(loop.Bottom.Newest, loop.IsFresh(loop.Top) ? loop.Top.Newest : 0) + 2)
            {
                StoppedNats += HotterThanTankNats;
            }
        }
    }

    public string Words(Loop loop) => string.Create(CultureInfo.InvariantCulture, $"tray +{_riseK:0.0} K in {_riseS:0} s");
}

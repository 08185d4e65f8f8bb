using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// Hot liquid in the tray. It warms at once where the spray reaches it. Hot domestic water does the same, so the tray
/// speaks loudest when it grows hotter than any domestic water in the tank. Only what it rises beyond the air counts.
/// </summary>
internal sealed class TraySign : ICircuitSign
{
    private const double WindowS = 20;

    /// <summary>Coolant must be so much hotter than the tray was, kelvin, to warm it.</summary>
    private const double HotterK = 20;

    /// <summary>An innocent tray moves some tenths of a kelvin in the window.</summary>
    private const double OrdinaryRiseK = 1, NatsPerK = 1.5, LimitNats = 6.5;

    /// <summary>
    /// Hotter than the tank by this, kelvin, and already speaking this loud, nats: then so much more.
    /// </summary>
    private const double HotterThanTankK = 2, LoudNats = 3, HotterThanTankNats = 4;

    /// <summary>
    /// A slower spout: so much beyond the air in a minute, kelvin, in a tray so much above the air, while the tank's
    /// bottom has not fallen. Hot water that is spilt lets as much cold into the tank, so without that it is coolant,
    /// and the tray may decide alone.
    /// </summary>
    private const double SpoutRiseK = 12, SpoutWindowS = 60, SpoutAboveAirK = 10, SpoutNats = 8.2;

    /// <summary>The rise must have lasted so long, seconds: one odd reading is no coolant.</summary>
    private const double LastsS = 10;

    /// <summary>The bottom has fallen by this, kelvin, within so long, seconds: water is drawn.</summary>
    private const double DrawnK = 0.4, DrawnS = 120;

    private Rise _rise;

    public string Name => "tray-rise";

    public bool IsHealthy { get; private set; }

    public double StoppedNats { get; private set; }

    public double LeavingNats => StoppedNats;

    public void Observe(Loop loop)
    {
        StoppedNats = 0;
        IsHealthy = Rise.TryRead(loop, loop.Tray, WindowS, out _rise);
        if (!IsHealthy || loop.HottestCelsius - _rise.LowestCelsius < HotterK)
        {
            return;
        }

        var airK = Rise.TryRead(loop, loop.Air, WindowS, out var air) ? air.K : 0;
        StoppedNats = Math.Clamp((_rise.K - airK - OrdinaryRiseK) * NatsPerK, 0, LimitNats);
        if (StoppedNats > LoudNats && loop.IsFresh(loop.Bottom))
        {
            var tank = Math.Max(loop.Bottom.Newest, loop.IsFresh(loop.Top) ? loop.Top.Newest : 0);
            StoppedNats += loop.Tray.Newest > tank + HotterThanTankK ? HotterThanTankNats : 0;
        }

        if (Rise.TryRead(loop, loop.Tray, SpoutWindowS, out var minute) && IsSpout(loop, minute))
        {
            StoppedNats = Math.Max(StoppedNats, SpoutNats);
            _rise = minute;
        }
    }

    private static bool IsSpout(Loop loop, Rise tray) =>
        loop.IsFresh(loop.Bottom) && loop.IsFresh(loop.Air)
        && tray.NewestCelsius - loop.Air.Newest > SpoutAboveAirK
        && loop.NowS - loop.Tray.NewestS < 1.5 * loop.PeriodS
        && loop.Tray.TryRange(loop.NowS - loop.Window(LastsS), loop.NowS, out var lasting, out _)
        && lasting - tray.LowestCelsius - (Rise.TryRead(loop, loop.Air, SpoutWindowS, out var air) ? air.K : 0)
            > SpoutRiseK
        && loop.Bottom.TryRange(loop.NowS - DrawnS, loop.NowS, out _, out var highest)
        && highest - loop.Bottom.Newest < DrawnK;

    public string Words(Loop loop) =>
        string.Create(CultureInfo.InvariantCulture, $"tray +{_rise.K:0.0} K in {_rise.WindowS:0} s");
}

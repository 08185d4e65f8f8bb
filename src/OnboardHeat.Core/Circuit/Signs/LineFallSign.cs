using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// Both lines fall together, on and on, as pipes do that no engine feeds. How deep they have fallen without a stop
/// tells stopped from running.
/// </summary>
internal sealed class LineFallSign : ICircuitSign
{
    private const double WindowS = 20;
    private const double LookBackS = 240;

    /// <summary>
    /// A long descent cools an engine by fifteen kelvin and more, so however deep the fall it never decides alone.
    /// </summary>
    private const double LimitNats = 7.2;

    private double _aloneUntilS = double.NegativeInfinity;
    private double _deeperK, _depthK, _rateFlow, _rateReturn;

    public string Name => "line-fall";

    public bool IsHealthy { get; private set; }

    public double StoppedNats { get; private set; }

    public double LeavingNats => 0;

    /// <summary>How far the slower line has fallen in the last four minutes, kelvin.</summary>
    public double DepthK => _depthK;

    public void Observe(Loop loop)
    {
        StoppedNats = 0;
        IsHealthy = loop.TrySlope(loop.Flow, WindowS, out var flow)
            && loop.TrySlope(loop.Return, WindowS, out var back);
        if (!IsHealthy)
        {
            return;
        }

        loop.TrySlope(loop.Return, WindowS, out back);
        _rateFlow = flow.KPerS;
        _rateReturn = back.KPerS;
        var fallFlow = Fall(loop, loop.Flow);
        var fallReturn = Fall(loop, loop.Return);
        _depthK = Math.Min(fallFlow, fallReturn);
        _deeperK = Math.Max(fallFlow, fallReturn);
        var slower = Math.Min(Decay(flow, loop.AirCelsius), Decay(back, loop.AirCelsius));
        if (loop.EngineOnS is > 0 and < 60)
        {
            return;
        }

        IsOneAlone = UpdateAlone(loop, flow, back);
        StoppedNats = slower > 1 / 5000.0
            ? Math.Clamp(
                (0.62 * _depthK) - 1.3 + (_depthK > 3 ? 0.2 * Math.Min(15, _deeperK - _depthK) : 0), 0, LimitNats)
            : Rising(flow, back);
    }

    /// <summary>
    /// One line drops as a probe in the open does while the other stays: that probe has come off, and its figure is no
    /// drive.
    /// </summary>
    public bool IsOneAlone { get; private set; }

    private bool UpdateAlone(Loop loop, Slope flow, Slope back)
    {
        var decayFlow = Decay(flow, loop.AirCelsius);
        var decayReturn = Decay(back, loop.AirCelsius);
        if (Math.Max(decayFlow, decayReturn) > 1 / 100.0 && _depthK < 6)
        {
            _aloneUntilS = loop.NowS + 300;
        }

        if (loop.NowS < _aloneUntilS && Math.Min(loop.Flow.Newest, loop.Return.Newest) < loop.AirCelsius + 10)
        {
            _aloneUntilS = loop.NowS + 300;
        }

        return loop.NowS < _aloneUntilS;
    }

    public string Words(Loop loop) => string.Create(
        CultureInfo.InvariantCulture,
        $"both lines fell {_depthK:0.0} K or more and fall on, flow {_rateFlow * 60:0.0} and return "
            + $"{_rateReturn * 60:0.0} K/min");

    private static double Fall(Loop loop, Trace trace) =>
        trace.TryRange(
            Math.Max(loop.NowS - LookBackS, loop.NowS - loop.EngineOnS - loop.EngineOffS), loop.NowS, out _,
            out var highest) ? highest - trace.Newest : 0;

    private static double Decay(Slope slope, double airCelsius) =>
        -slope.KPerS / Math.Max(10, slope.Celsius - airCelsius);

    private static double Rising(Slope flow, Slope back) => flow.KPerS > 0.03 || back.KPerS > 0.03 ? -3 : 0;
}

using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// The tank is the best witness: while coolant passes the coil, the water by it warms (or cools) in proportion to flow
/// minus water; when it stops, that rate is missing within half a minute. The proportion is this van's own, learnt from
/// what is at least ninety seconds old, so that a failure is never learnt as normal. Looks over several windows at
/// once, since nobody knows when it began; where the drive is small the looks are added up over minutes instead.
/// </summary>
internal sealed class TankHeatSign : ICircuitSign
{
    /// <summary>
    /// Wall probes of lines and tank lag alike; the tank's a little more (recorded failures: 10 to 15 s).
    /// </summary>
    private const double DriveLeadS = 10;

    /// <summary>How far off that lead may be, seconds: while the flow moves, the drive is known only so well.</summary>
    private const double LagDoubtS = 25;

    /// <summary>The learning looks no closer than this to now.</summary>
    private const double LearnDelayS = 90;

    /// <summary>
    /// Conductance of a coil in a small tank, W/K, when nothing is learnt (coils of 0.2-0.5 m2 at 150 W/(m2 K)).
    /// </summary>
    private const double CoilPriorWPerK = 48;

    /// <summary>Drift of a standing tank that is not loss, K/s: mixing and conduction between layers.</summary>
    private const double DriftKPerS = 0.0005;

    /// <summary>Evidence of one window is bounded: a model is never surer than this.</summary>
    private const double WindowLimitNats = 10;

    /// <summary>Where the coolant is colder than the water the missing cooling says no more than this, nats.</summary>
    private const double ColderLimitNats = 4;

    /// <summary>The best of several windows is a little lucky by itself.</summary>
    private const double ChoiceNats = 0.7;

    /// <summary>
    /// Density of looks that fit neither (a lying probe, an unseen draw), per K/s: where nothing fits, nothing is said.
    /// </summary>
    private const double OddDensity = 0.02;

    /// <summary>Share of its usual warming that an idling pump leaves.</summary>
    private const double IdleShare = 0.57;

    /// <summary>How far off the guess of one watt per kelvin for the tank's own loss may be, as a share.</summary>
    private const double LossShare = 0.5;

    private static readonly double[] s_windowsS = [15, 22, 33, 50, 75];

    private readonly Cusum _slow = new(4);
    private HeatRatio? _ratio;
    private bool _wasStratified;
    private double _rise, _expected, _best;
    private double _drawUntilS = double.NegativeInfinity;

    public string Name => "tank-heat";

    public bool IsHealthy { get; private set; }

    public double StoppedNats => IsHealthy ? Math.Max(_best, _slow.Sum) : 0;

    public double LeavingNats => 0;

    public void Observe(Loop loop)
    {
        _best = 0;
        var ratio = _ratio ??= new HeatRatio(PriorRatioPerS(loop));
        if (loop.IsEngineOn != true)
        {
            IsHealthy = false;
            _slow.Reset();
            return;
        }

        Learn(loop, ratio);
        _best = double.NegativeInfinity;
        var usual = 0.0;
        foreach (var windowS in s_windowsS)
        {
            if (TryWeigh(loop, ratio, windowS, out var nats))
            {
                _best = Math.Max(_best, nats - ChoiceNats);
                usual = Math.Min(usual, nats);
                if (windowS == s_windowsS[^1])
                {
                    _slow.Add(nats * loop.StepS / loop.Window(windowS));
                }
            }
        }

        IsHealthy = double.IsFinite(_best) && loop.NowS >= _drawUntilS;
        _best = !IsHealthy ? 0 : _best > 0 ? _best : Math.Max(-4, usual);
        if (!IsHealthy)
        {
            _slow.Reset();
        }
    }

    public string Words(Loop loop) => string.Create(
        CultureInfo.InvariantCulture,
        $"tank warms {_rise * 60:0.00} K/min where the coil should give {_expected * 60:0.00}");

    private static double PriorRatioPerS(Loop loop) =>
        (loop.Learnt.CoilWPerK?.Value ?? CoilPriorWPerK) / loop.TankJPerK;

    private bool TryWeigh(Loop loop, HeatRatio ratio, double windowS, out double nats)
    {
        nats = 0;
        var window = loop.Window(windowS);
        if (loop.EngineOnS < window + 30
            || !loop.TrySlope(loop.Bottom, windowS, out var bottom)
            || !loop.IsFresh(loop.Flow)
            || !loop.Flow.TrySlope(loop.NowS - DriveLeadS - window, loop.NowS - DriveLeadS, out var flow))
        {
            return false;
        }

        var hasTop = loop.TrySlope(loop.Top, windowS, out var top);
        var isMixed = hasTop && Math.Abs(top.Celsius - bottom.Celsius) < 1.5;
        NoteLayers(ratio, hasTop, top.Celsius - bottom.Celsius);
        // Standing, both ends of a mixed tank stand; in a draw the bottom falls behind the top. The livelier one speaks
        // then.
        var isDrawn = isMixed && Math.Abs(top.KPerS - bottom.KPerS) > 2.5 * bottom.DeviationKPerS;
        _rise = isDrawn ? Math.Max(bottom.KPerS, top.KPerS) : isMixed ? (bottom.KPerS + top.KPerS) / 2 : bottom.KPerS;
        var noise = isMixed && !isDrawn ? bottom.DeviationKPerS / Math.Sqrt(2) : bottom.DeviationKPerS;
        var drive = flow.Celsius - bottom.Celsius;
        var lossKPerS = 1.0 / loop.TankJPerK * (bottom.Celsius - loop.AirCelsius);
        _expected = ratio.Expected(drive);
        if (bottom.KPerS < Math.Min(-0.004, 1.2 * Math.Min(_expected, -lossKPerS)) - (3 * bottom.DeviationKPerS))
        {
            // Faster down than loss or coolant can do: cold water enters. The tank is no witness until that has
            // settled.
            _drawUntilS = loop.NowS + 180;
        }

        var still2 = Square(noise) + Square(DriftKPerS);
        var vague = ratio.Variance(drive) + Square(ratio.RatioPerS * flow.KPerS * LagDoubtS);
        var spread2 = still2 + vague + Square((hasTop && !isMixed ? 0.3 : 0.15) * _expected);
        var running = (0.9 * Normal(_rise - (0.95 * _expected) + lossKPerS, spread2))
            + (0.1 * Normal(_rise - (IdleShare * _expected) + lossKPerS, still2 + vague + Square(0.1 * _expected)))
            + OddDensity;
        var standing = Normal(_rise + lossKPerS, still2 + Square(LossShare * lossKPerS)) + OddDensity;
        // A coil colder than the water cools what lies beside it and little else, and a slug of cold coolant passes
        // soon.
        nats = Math.Clamp(
            Math.Log(standing / running), -WindowLimitNats, _expected < 0 ? ColderLimitNats : WindowLimitNats);
        return true;
    }

    private void NoteLayers(HeatRatio ratio, bool hasTop, double topAboveBottomK)
    {
        if (hasTop && topAboveBottomK > 3)
        {
            _wasStratified = true;
        }
        else if (hasTop && topAboveBottomK < 1.5 && _wasStratified)
        {
            // What was learnt while only the bottom warmed is too much for the whole tank.
            _wasStratified = false;
            ratio.Forget();
        }
    }

    private void Learn(Loop loop, HeatRatio ratio)
    {
        var window = loop.Window(60);
        if (loop.IsInWorks || loop.EngineOnS < LearnDelayS + window || StoppedNats > 3
            || !loop.Bottom.TrySlope(loop.NowS - LearnDelayS - window, loop.NowS - LearnDelayS, out var bottom)
            || !loop.Flow.TrySlope(
                loop.NowS - LearnDelayS - DriveLeadS - window, loop.NowS - LearnDelayS - DriveLeadS, out var flow)
            || bottom.KPerS < -0.01)
        {
            return;
        }

        var drive = flow.Celsius - bottom.Celsius;
        var look = Square(bottom.DeviationKPerS) + Square(DriftKPerS) + Square(0.15 * ratio.RatioPerS * drive);
        ratio.Learn(
            drive, bottom.KPerS + ((bottom.Celsius - loop.AirCelsius) / loop.TankJPerK),
            look * window / Math.Max(0.5, loop.StepS), loop.StepS);
    }

    private static double Square(double x) => x * x;

    private static double Normal(double off, double variance) =>
        Math.Exp(-off * off / (2 * variance)) / Math.Sqrt(2 * Math.PI * variance);
}

using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// Coolant that passes the coil comes back between flow and water. A return that stands outside is impossible while it
/// circulates: hotter than both above all; colder than both is also what a slipping pump or air does, and says less.
/// What the probes of this van show outside while all is well (offsets, clips that read low) is learnt and taken off.
/// </summary>
internal sealed class ReturnPlaceSign : ICircuitSign
{
    private const double LookBackS = 28;
    private const double MarginK = 1.2;
    private const double LearnS = 300, LearnDelayS = 90;
    private const double NatsPerKHigh = 1.6, NatsPerKLow = 0.7, LimitNats = 6;

    private double _aboveUsualK, _belowUsualK, _outsideK;
    private readonly Trace _above = new(), _below = new();

    public string Name => "return-place";

    public bool IsHealthy { get; private set; }

    public double StoppedNats { get; private set; }

    public double LeavingNats => 0;

    public void Observe(Loop loop)
    {
        StoppedNats = 0;
        var look = loop.Window(LookBackS);
        IsHealthy = loop.IsFresh(loop.Flow) && loop.IsFresh(loop.Return)
            && loop.IsFresh(loop.Bottom) && loop.IsEngineOn == true && loop.EngineOnS > 60 + look;
        if (!IsHealthy
            || !loop.Flow.TryRange(loop.NowS - look, loop.NowS, out var flowLow, out var flowHigh)
            || !loop.Bottom.TryRange(loop.NowS - look, loop.NowS, out var bottomLow, out var bottomHigh))
        {
            return;
        }

        var above = loop.Return.Newest - Math.Max(flowHigh, bottomHigh);
        var below = Math.Min(flowLow, bottomLow) - loop.Return.Newest;
        _above.Add(loop.NowS, above);
        _below.Add(loop.NowS, below);
        if (_above.TryRange(loop.NowS - LearnDelayS - LearnS, loop.NowS - LearnDelayS, out _, out var usualAbove)
            && _below.TryRange(loop.NowS - LearnDelayS - LearnS, loop.NowS - LearnDelayS, out _, out var usualBelow))
        {
            _aboveUsualK = Math.Max(0, usualAbove);
            _belowUsualK = Math.Max(0, usualBelow);
        }
        else
        {
            return;
        }

        var high = above - _aboveUsualK - MarginK;
        var low = below - _belowUsualK - MarginK;
        _outsideK = Math.Max(high, low) + MarginK;
        StoppedNats = Math.Clamp(Math.Max(high * NatsPerKHigh, low * NatsPerKLow), 0, LimitNats);
    }

    public string Words(Loop loop) =>
        string.Create(CultureInfo.InvariantCulture, $"return {_outsideK:0.0} K outside what flow and tank allow");
}

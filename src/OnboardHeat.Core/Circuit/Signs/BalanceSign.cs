using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// The heat balance of the coil: while coolant passes it, what the flow loses on its way to the return is this van's
/// own share of flow minus water, and both lines carry the same stream. Stopped, each line cools by itself and the
/// balance drifts off. Share and offset are learnt from what is at least ninety seconds old, and so is how far the
/// balance strays while all is well.
/// </summary>
internal sealed class BalanceSign : ICircuitSign
{
    private const double WindowS = 16, LearnDelayS = 90;

    /// <summary>
    /// First guess of the share and how far off; offset of two clip-on probes, kelvin; both may wander so far in a
    /// quarter of an hour.
    /// </summary>
    private const double Share = 0.1, ShareOff = 0.14, OffsetK =
        1.3, DriftShare = 0.03, DriftOffsetK = 0.7, DriftS = 900;

    /// <summary>
    /// What the balance strays by itself at first, kelvin, and at the least; and how fast that is learnt, seconds.
    /// </summary>
    private const double StraysK = 1.2, StraysLeastK = 0.5, StraysS = 400;

    /// <summary>While the flow moves, flow and return differ by how late one is: so many seconds.</summary>
    private const double LateS = 9;

    /// <summary>Stopped, the balance lies anywhere within this, kelvin; as a rule it has only begun to.</summary>
    private const double AnywhereK = 24, BegunShare = 0.5;

    private readonly StraightLine _line = new(Share, ShareOff, OffsetK, (DriftShare, DriftOffsetK), DriftS);
    private double _strays2 = StraysK * StraysK;
    private double _offK;

    public string Name => "heat-balance";

    public bool IsHealthy { get; private set; }

    public double StoppedNats { get; private set; }

    public double LeavingNats => 0;

    public void Observe(Loop loop)
    {
        StoppedNats = 0;
        var window = loop.Window(WindowS);
        IsHealthy = loop.IsEngineOn == true && loop.EngineOnS > 60 + window
            && TryLook(loop, 0, out var driveK, out var lostK, out var movesKPerS);
        if (!IsHealthy)
        {
            return;
        }

        TryLook(loop, 0, out driveK, out lostK, out movesKPerS);
        _offK = lostK - _line.Expected(driveK);
        var spread2 = _strays2 + _line.Variance(driveK) + Square(movesKPerS * LateS);
        var usual = Student(_offK, spread2);
        StoppedNats = Math.Log(BegunShare + ((1 - BegunShare) / AnywhereK / usual));
        Learn(loop);
    }

    public string Words(Loop loop) => string.Create(
        CultureInfo.InvariantCulture,
        $"return {Math.Abs(_offK):0.0} K {(_offK > 0 ? "below" : "above")} where this van's coil puts it");

    private static bool TryLook(Loop loop, double delayS, out double driveK, out double lostK, out double movesKPerS)
    {
        driveK = lostK = movesKPerS = 0;
        if (!loop.TrySlope(loop.Flow, WindowS, out var flow, delayS)
            || !loop.TrySlope(loop.Return, WindowS, out var back, delayS)
            || !loop.TrySlope(loop.Bottom, WindowS, out var bottom, delayS))
        {
            return false;
        }

        driveK = flow.Celsius - bottom.Celsius;
        lostK = flow.Celsius - back.Celsius;
        movesKPerS = flow.KPerS;
        return true;
    }

    private void Learn(Loop loop)
    {
        if (loop.IsInWorks || loop.EngineOnS < LearnDelayS + 90
            || !TryLook(loop, LearnDelayS, out var driveK, out var lostK, out var movesKPerS))
        {
            return;
        }

        var off = lostK - _line.Expected(driveK);
        _strays2 += (Math.Clamp(off * off, StraysLeastK * StraysLeastK, 16) - _strays2) * Math.Min(
            1, loop.StepS / StraysS);
        _line.Learn(
            driveK, lostK, (0.1 + Square(movesKPerS * LateS)) * WindowS / Math.Max(0.5, loop.StepS), loop.StepS);
    }

    /// <summary>
    /// Student's t with three degrees of freedom: idling, a bend or a restart take the balance far off now and then.
    /// </summary>
    private static double Student(double off, double spread2)
    {
        var t2 = off * off / spread2;
        return 0.3675 / Math.Sqrt(spread2) / Square(1 + (t2 / 3));
    }

    private static double Square(double x) => x * x;
}

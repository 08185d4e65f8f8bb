namespace OnboardHeat.Core.Tank;

/// <summary>
/// Sees by the lowest tank probe that water is being drawn: cold entering below makes it fall far faster than any loss
/// can, and faster than the model expects.
/// </summary>
internal sealed class DrawWatch
{
    /// <summary>Time constants of the two averages whose difference tells a fall, s.</summary>
    private const double FastS = 15, SlowS = 90;

    /// <summary>
    /// Fall (slow less fast average) that may be a draw, and that says it has ended, K: coolant turning by its own
    /// buoyancy cools the bottom by 0.6.
    /// </summary>
    private const double BeginsK = 1.4, EndsK = 0.08;

    /// <summary>How much lower than the model the probe must read as well, K.</summary>
    private const double BelowModelK = 0.6;

    /// <summary>Seconds without a fall that end a draw.</summary>
    private const double QuietS = 60;

    /// <summary>
    /// Time from the first reading of a probe until its fall may be a draw, s: the first belief settles.
    /// </summary>
    private const double SettlesS = 240;

    /// <summary>Gap after which the averages begin anew, s.</summary>
    private const double GapS = 600;

    private double _fast = double.NaN;
    private double _slow;
    private double _quietS;
    private double _watchedS;
    private int _probe = -1;

    /// <summary>Whether water is being drawn.</summary>
    public bool IsDrawing { get; private set; }

    /// <summary>
    /// Takes the lowest good tank probe's reading, and what the model expected of it. True when a draw is seen to
    /// begin.
    /// </summary>
    /// <param name="probe">0 top, 1 middle, 2 bottom.</param>
    /// <param name="celsius">Its reading, °C.</param>
    /// <param name="expectedCelsius">What was expected, °C.</param>
    /// <param name="stepS">Seconds since the last call.</param>
    public bool Observe(int probe, double celsius, double expectedCelsius, double stepS)
    {
        if (probe != _probe || stepS > GapS)
        {
            _probe = probe;
            _watchedS = 0;
            (_fast, _slow) = (celsius, celsius);
        }

        _fast += stepS / (stepS + FastS) * (celsius - _fast);
        _slow += stepS / (stepS + SlowS) * (celsius - _slow);
        var fall = _slow - _fast;
        if (IsDrawing)
        {
            _quietS = fall < EndsK ? _quietS + stepS : 0;
            IsDrawing = _quietS <= QuietS;
            return false;
        }

        _quietS = 0;
        _watchedS += stepS;
        IsDrawing = _watchedS > SettlesS && fall > BeginsK && expectedCelsius - celsius > BelowModelK;
        return IsDrawing;
    }
}

namespace OnboardHeat.Core.Tank;

/// <summary>
/// Tells that a standing tank loses far more than its lagging lets through: with valves left open, coolant turns slowly
/// by its own buoyancy and carries heat away. It compares the fall of the probes over half an hour with the loss that
/// is usual.
/// </summary>
internal sealed class CircuitLeak(TankGeometry tank)
{
    /// <summary>Standing before the window begins, s: layers and lines settle.</summary>
    private const double SettlesS = 900;

    /// <summary>Length of a window, s; two in a row find it, because an estimate may shift once.</summary>
    private const double WindowS = 1200;

    /// <summary>Times the usual loss from which on it is no lagging any more, and below which it is again.</summary>
    private const double FoundAt = 2.5, GoneAt = 1.7;

    /// <summary>Excess over the air under which nothing can be told, K.</summary>
    private const double LeastExcessK = 12;

    private double _startCelsius;
    private double _excessKs;
    private double _windowS;
    private double _standsS;
    private bool _wasMore;

    /// <summary>Whether heat is leaving by another way than the lagging.</summary>
    public bool IsFound { get; private set; }

    /// <summary>Apparent loss over the last window, W/K; zero before the first.</summary>
    public double ApparentWPerK { get; private set; }

    /// <summary>
    /// Takes what the tank probes read on average while nothing heats or draws; not quiet begins anew.
    /// </summary>
    public void Observe(bool isQuiet, double meanCelsius, double airCelsius, double usualWPerK, double stepS)
    {
        if (!isQuiet)
        {
            (_standsS, _windowS, _excessKs) = (0, 0, 0);
            (IsFound, _wasMore) = (false, false);
            return;
        }

        _standsS += stepS;
        if (_standsS < SettlesS || meanCelsius - airCelsius < LeastExcessK)
        {
            _windowS = 0;
            return;
        }

        if (_windowS == 0)
        {
            (_startCelsius, _excessKs) = (meanCelsius, 0);
        }

        _windowS += stepS;
        _excessKs += stepS * (meanCelsius - airCelsius);
        if (_windowS >= WindowS)
        {
            ApparentWPerK = (_startCelsius - meanCelsius) * tank.TotalJPerK / _excessKs;
            var isMore = ApparentWPerK > usualWPerK * (IsFound ? GoneAt : FoundAt);
            (IsFound, _wasMore) = (isMore && (IsFound || _wasMore), isMore);
            _windowS = 0;
        }
    }
}

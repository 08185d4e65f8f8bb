namespace OnboardHeat.Core.Tank;

/// <summary>
/// Sees by the bottom of a standing tank that coolant turns by its own buoyancy: it enters the coil cold and takes its
/// heat from the lowest layers, so that the bottom falls by kelvins while the top hardly does. Lagging never does that,
/// and a draw does it within minutes.
/// </summary>
internal sealed class NaturalCirculation
{
    /// <summary>
    /// Standing before a window begins, and the length of a window, s: lines and layers settle, then half a kelvin
    /// tells.
    /// </summary>
    private const double SettlesS = 600, WindowS = 900;

    /// <summary>
    /// Fall of the bottom beyond that of the top in a window, K: the cold that a lagged bottom plate makes takes hours
    /// for it.
    /// </summary>
    private const double FoundK = 1.5;

    /// <summary>
    /// Standing after which the lines have cooled from a drive or a draw, how long the other sign must last, s, and how
    /// much warmer the warm line must be than air, than the bottom and than the cold line, K: no pipe is warmed by its
    /// end beyond the water that it ends in, but by water that comes down it.
    /// </summary>
    private const double LinesCoolS = 1500, LineLastsS = 600, AboveAirK = 8, AboveBottomK = 3, AboveOtherLineK = 5;

    private double _standsS;
    private double _windowS;
    private double _apartK;
    private double _warmS;

    /// <summary>
    /// Whether coolant circulates. It stays so until the tank is heated or drawn from: the filter finds how much.
    /// </summary>
    public bool IsFound { get; private set; }

    /// <summary>
    /// Takes what the lines read (°C, NaN for none) beside a tank that is cold below, where the bottom can fall no
    /// further.
    /// </summary>
    public void ObserveLines(double flow, double back, double bottom, double air, double stepS)
    {
        var (warm, cold) = (Math.Max(flow, back), Math.Min(flow, back));
        var isWarm = _standsS > LinesCoolS && warm > bottom + AboveBottomK && warm > air + AboveAirK
            && warm > cold + AboveOtherLineK;
        _warmS = isWarm ? _warmS + stepS : 0;
        IsFound |= _warmS >= LineLastsS;
    }

    /// <summary>
    /// Takes what top and bottom probe read (°C, NaN for none) after so many more seconds; not quiet begins anew.
    /// </summary>
    public void Observe(bool isQuiet, double topCelsius, double bottomCelsius, double stepS)
    {
        if (!isQuiet)
        {
            (_standsS, _windowS, _warmS, IsFound) = (0, 0, 0, false);
            return;
        }

        _standsS += stepS;
        var apartK = topCelsius - bottomCelsius;
        if (_standsS < SettlesS || !double.IsFinite(apartK))
        {
            _windowS = 0;
            return;
        }

        if (_windowS == 0)
        {
            _apartK = apartK;
        }

        _windowS += stepS;
        if (_windowS >= WindowS)
        {
            IsFound |= apartK - _apartK > FoundK;
            _windowS = 0;
        }
    }
}

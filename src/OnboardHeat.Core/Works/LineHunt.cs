namespace OnboardHeat.Core.Works;

/// <summary>
/// Counts how often one line has turned round in the last minutes. Coolant that carries air comes in slugs, and the
/// line behind them falls and rises by kelvins several times a minute; a thermostat or a hill turns it round once or
/// twice in that time. Looked at against its own smoothed course, so that it is seen while the line warms up, too.
/// </summary>
internal sealed class LineHunt
{
    /// <summary>
    /// A turn counts from this swing, K: ten times a probe's noise, less than what a slug of air does.
    /// </summary>
    private const double SwingK = 0.6;

    /// <summary>
    /// The smoothed course follows with this lag, s: longer than a slug of air, shorter than a warm-up.
    /// </summary>
    private const double SmoothS = 40;

    /// <summary>Turns are remembered for so long, s.</summary>
    private const double MemoryS = 150;

    /// <summary>So many turns in that time are hunting.</summary>
    private const int TurnsOfHunting = 4;

    private readonly double[] _turnedAtS = [-1e9, -1e9, -1e9, -1e9];
    private double _smoothCelsius = double.NaN;
    private double _atS;
    private double _extremeK;
    private bool _isRising;
    private int _next;

    /// <summary>Takes the line's newest reading.</summary>
    public void Observe(double elapsedS, double celsius)
    {
        var stepS = elapsedS - _atS;
        _atS = elapsedS;
        if (double.IsNaN(_smoothCelsius))
        {
            (_smoothCelsius, _extremeK) = (celsius, 0);
            return;
        }

        _smoothCelsius += (celsius - _smoothCelsius) * stepS / (SmoothS + stepS);
        var offK = celsius - _smoothCelsius;
        if (_isRising ? offK > _extremeK : offK < _extremeK)
        {
            _extremeK = offK;
        }
        else if (Math.Abs(offK - _extremeK) >= SwingK)
        {
            _isRising = !_isRising;
            _extremeK = offK;
            _turnedAtS[_next] = elapsedS;
            _next = (_next + 1) % TurnsOfHunting;
        }
    }

    /// <summary>Whether it hunts: the oldest of the last turns is still remembered.</summary>
    public bool IsHunting(double elapsedS) => elapsedS - _turnedAtS[_next] <= MemoryS;

    /// <summary>Forgets everything.</summary>
    public void Clear()
    {
        Array.Fill(_turnedAtS, -1e9);
        _smoothCelsius = double.NaN;
    }
}

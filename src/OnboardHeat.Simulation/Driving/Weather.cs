namespace OnboardHeat.Simulation.Driving;

/// <summary>
/// The open air: a day's swing, a slow wander, and 6.5 K less for each kilometre of height (the standard atmosphere).
/// </summary>
internal sealed class Weather(DrivePlan plan, Chance chance)
{
    private const double LapseKPerM = 0.0065;

    /// <summary>Spread of the wander and the time over which it forgets, common practice.</summary>
    private const double WanderK = 0.8, WanderS = 1_500;

    private readonly double _startHour = plan.Start.TimeOfDay.TotalHours;
    private double _wander;
    private double _untilNextS;
    private double _dayCosine;

    public double OutsideCelsius { get; private set; }

    /// <summary>Height of the sun, 0 (below the horizon) to 1, from six to six.</summary>
    public double SunShare { get; private set; }

    public void Step(double stepS, double elapsedS, double altitudeM)
    {
        _untilNextS -= stepS;
        if (_untilNextS <= 0)
        {
            // Once a minute is often enough for air.
            _untilNextS = 60;
            _wander += (-_wander * 60 / WanderS) + (WanderK * Math.Sqrt(2 * 60 / WanderS) * chance.Jitter());
            var hour = _startHour + (elapsedS / 3600);
            _dayCosine = Math.Cos((hour - 15) * Math.PI / 12);
            SunShare = Math.Max(0, Math.Sin((hour - 6) * Math.PI / 12));
        }

        OutsideCelsius = plan.OutsideCelsius + (plan.DaySwingK * _dayCosine)
            + _wander - (LapseKPerM * (altitudeM - plan.AltitudeM));
    }
}

namespace OnboardHeat.Simulation.Driving;

/// <summary>
/// The hot draw-off pipe and the cold supply pipe: warm or cold with a draw, then drifting back to the air around.
/// </summary>
internal sealed class OutletPipe(double celsius)
{
    /// <summary>
    /// Time constants with water running and standing, seconds: a short 10 mm pipe (common practice, no source).
    /// </summary>
    private const double RunningS = 6, StandingS = 900;

    public double Celsius { get; private set; } = celsius;

    public void Step(double stepS, bool isRunning, double waterCelsius, double airCelsius)
    {
        var (target, lag) = isRunning ? (waterCelsius, RunningS) : (airCelsius, StandingS);
        Celsius += (target - Celsius) * stepS / (lag + stepS);
    }
}

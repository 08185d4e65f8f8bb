namespace OnboardHeat.Engine.Options;

/// <summary>The coolant circuit.</summary>
public sealed class CircuitOptions
{
    /// <summary>
    /// Highest coolant temperature that is in order, degrees Celsius, 60 to 140; default 110. The vehicle's handbook
    /// says it.
    /// </summary>
    public double CoolantMaxCelsius { get; set; } = 110;

    /// <summary>
    /// Hoses, pipes and valves with a rating of their own, 32 at most; may be empty. Each id once.
    /// </summary>
    public IReadOnlyList<PartOptions> Parts { get; set; } = [];
}

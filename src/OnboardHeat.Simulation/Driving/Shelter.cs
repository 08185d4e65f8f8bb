namespace OnboardHeat.Simulation.Driving;

/// <summary>
/// The space that the tank stands in: warmed by sun, heaters and the tank, cooled by the open air and by doors.
/// </summary>
internal sealed class Shelter(ShelterTraits traits, double celsius)
{
    /// <summary>
    /// Open doors change the air with this conductance, W/K; a travelling van leaks more than a standing one.
    /// </summary>
    private const double DoorsWPerK = 90, TravellingFactor = 1.6;

    /// <summary>The space's own heater, watts at most.</summary>
    private const double HeaterW = 2_000;

    public double Celsius { get; private set; } = celsius;

    public bool AreDoorsOpen { get; set; }

    /// <summary>Temperature that the space's own heater keeps; null while it is off.</summary>
    public double? KeptCelsius { get; set; }

    public void Step(
        double stepS, double outsideCelsius, double sunShare, bool isMoving, double tankW, double cabHeaterW)
    {
        var lossWPerK = (traits.LossWPerK * (isMoving ? TravellingFactor : 1)) + (AreDoorsOpen ? DoorsWPerK : 0);
        var heater = KeptCelsius is { } kept ? Math.Clamp((kept - Celsius) * 400, 0, HeaterW) : 0;
        var gainW = (traits.SunW * sunShare) + tankW + (traits.HeaterShare * cabHeaterW) + heater;
        Celsius = ((traits.CapacityJPerK * Celsius) + (stepS * (gainW + (lossWPerK * outsideCelsius))))
            / (traits.CapacityJPerK + (stepS * lossWPerK));
    }
}

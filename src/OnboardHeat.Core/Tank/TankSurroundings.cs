namespace OnboardHeat.Core.Tank;

/// <summary>What is around the tank during a step, as far as readings tell.</summary>
/// <param name="AirCelsius">Air by the tank as read, or a stand-in, °C.</param>
/// <param name="CoolantCelsius">Coolant in the coil as its probes show it, °C; null when no pump drives any.</param>
/// <param name="CirculatesFromCelsius">
/// Coolant that enters the coil by its own buoyancy, °C; null when none does.
/// </param>
/// <param name="DrawsFromCelsius">Water that enters while hot water is drawn, °C; null when none is.</param>
/// <param name="IsElementOn">Whether the electric element heats.</param>
internal readonly record struct TankSurroundings(
    double AirCelsius, double? CoolantCelsius, double? CirculatesFromCelsius, double? DrawsFromCelsius,
    bool IsElementOn);

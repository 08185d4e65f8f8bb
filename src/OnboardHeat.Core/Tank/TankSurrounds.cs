namespace OnboardHeat.Core.Tank;

/// <summary>What acts on the tank during a step.</summary>
/// <param name="AirCelsius">Air by the tank, degrees Celsius.</param>
/// <param name="LossWPerK">Heat loss per kelvin above that air, W/K; zero or more.</param>
/// <param name="CoolantCelsius">Mean coolant in the coil, degrees Celsius; of no meaning without conductance.</param>
/// <param name="CoilWPerK">Conductance between coolant and water, W/K; zero when no coolant passes.</param>
/// <param name="CoilFootLayers">Where the coil (and the element) begins, in layers from the bottom, 0 or more.</param>
/// <param name="CoilReachLayers">Where it ends, in layers from the bottom: above the foot, at most 12.</param>
/// <param name="ElementW">Heat from the electric element, watts; zero or more.</param>
internal readonly record struct TankSurrounds(
    double AirCelsius, double LossWPerK, double CoolantCelsius, double CoilWPerK, double CoilFootLayers,
    double CoilReachLayers, double ElementW);

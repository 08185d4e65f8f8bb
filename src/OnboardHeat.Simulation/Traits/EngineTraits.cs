namespace OnboardHeat.Simulation;

/// <summary>
/// The engine, its cooling and its pump. Magnitudes of a 2 to 2.5 litre diesel; common practice, no source, unless
/// said.
/// </summary>
public sealed record EngineTraits
{
    /// <summary>Heat capacity of the metal that warms with the coolant, J/K.</summary>
    public double MetalJPerK { get; init; } = 62_000;

    /// <summary>Coolant in the jacket, litres.</summary>
    public double JacketLitres { get; init; } = 4;

    /// <summary>Coolant in radiator and its hoses, litres.</summary>
    public double RadiatorLitres { get; init; } = 3;

    /// <summary>Heat capacity of the radiator's metal, J/K.</summary>
    public double RadiatorJPerK { get; init; } = 5_000;

    /// <summary>Coolant that the expansion bottle holds, litres.</summary>
    public double BottleLitres { get; init; } = 1.2;

    /// <summary>Share of the fuel's heat that ends in the coolant.</summary>
    public double CoolantShare { get; init; } = 0.23;

    /// <summary>
    /// Loss of the block to the air under the bonnet, W/K standing; a moving van doubles it. Cooling of 0.012 K/s after
    /// stopping (real trips) gives about 15.
    /// </summary>
    public double BlockLossWPerK { get; init; } = 15;

    /// <summary>Temperature at which the thermostat begins to open, degrees Celsius: 80 to 92 (service data).</summary>
    public double ThermostatCelsius { get; init; } = 86;

    /// <summary>From begin to wide open, kelvin.</summary>
    public double ThermostatSpanK { get; init; } = 10;

    /// <summary>How much lower it closes than it opens, kelvin: 5 to 9 on the coolant (service data).</summary>
    public double HysteresisK { get; init; } = 5;

    /// <summary>Lag of its wax, seconds.</summary>
    public double WaxLagS { get; init; } = 12;

    /// <summary>Share of the full opening that passes when it is closed.</summary>
    public double ThermostatLeakShare { get; init; } = 0.01;

    /// <summary>Coolant to the tank at 2000 rpm with a free coil, litres a minute.</summary>
    public double TankFlowLitresPerMinute { get; init; } = 6;

    /// <summary>Share of that flow at idle (800 rpm).</summary>
    public double IdleFlowShare { get; init; } = 0.45;

    /// <summary>Conductance of the cab heater's core with the fan full, W/K.</summary>
    public double HeaterWPerK { get; init; } = 110;

    /// <summary>Mass of the van as it travels, kilograms.</summary>
    public double VanKg { get; init; } = 3300;

    /// <summary>Whether the engine stops by itself at lights when warm.</summary>
    public bool StopsAtLights { get; init; }

    /// <summary>
    /// Flow that a hot tank drives by itself through open valves, litres a minute and kelvin; zero with a trap in the
    /// line.
    /// </summary>
    public double SelfFlowLitresPerMinuteK { get; init; } = 0.002;
}

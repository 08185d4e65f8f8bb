namespace OnboardHeat.Simulation;

/// <summary>What is really so at a scan, for judging what was said of it. Reused from scan to scan.</summary>
public sealed class Truth
{
    /// <summary>Seconds since the start.</summary>
    public double ElapsedS { get; internal set; }

    /// <summary>
    /// Heat in water and vessel above the supply's cold water, joules, by IAPWS-fitted density and enthalpy.
    /// </summary>
    public double StoredJ { get; internal set; }

    /// <summary>Water at the top, degrees Celsius.</summary>
    public double TopCelsius { get; internal set; }

    /// <summary>Mean of the water, degrees Celsius.</summary>
    public double MeanCelsius { get; internal set; }

    /// <summary>Water at the bottom, degrees Celsius.</summary>
    public double BottomCelsius { get; internal set; }

    /// <summary>Heat from the coil into the water, watts; negative when the circuit takes heat out.</summary>
    public double CoilW { get; internal set; }

    /// <summary>Heat from the element, watts.</summary>
    public double ElementW { get; internal set; }

    /// <summary>Loss coefficient of the tank at 40 K, W/K.</summary>
    public double LossWPerK { get; internal set; }

    /// <summary>Conductance of the coil at 5 L/min and 35 K, W/K.</summary>
    public double CoilWPerK { get; internal set; }

    /// <summary>Air around the tank, degrees Celsius.</summary>
    public double SurroundingsCelsius { get; internal set; }

    /// <summary>Coolant leaving the engine, degrees Celsius.</summary>
    public double EngineCelsius { get; internal set; }

    /// <summary>Coolant through the coil, litres a minute; negative when it goes backwards.</summary>
    public double CoilLitresPerMinute { get; internal set; }

    /// <summary>Hot water being drawn, litres a minute.</summary>
    public double DrawLitresPerMinute { get; internal set; }

    /// <summary>Coolant lost so far, litres.</summary>
    public double CoolantLostLitres { get; internal set; }

    /// <summary>Speed, km/h.</summary>
    public double SpeedKmh { get; internal set; }

    /// <summary>Altitude, metres.</summary>
    public double AltitudeM { get; internal set; }

    /// <summary>Open air, degrees Celsius.</summary>
    public double OutsideCelsius { get; internal set; }

    /// <summary>Whether the engine runs.</summary>
    public bool IsEngineOn { get; internal set; }

    /// <summary>Whether the isolation valves are closed.</summary>
    public bool AreValvesClosed { get; internal set; }

    /// <summary>The road under way.</summary>
    public LegKind Road { get; internal set; }

    /// <summary>What failed first so that coolant leaves; null while the circuit is tight.</summary>
    public Happening? Failure { get; internal set; }
}

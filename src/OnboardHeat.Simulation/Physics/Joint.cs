namespace OnboardHeat.Simulation.Physics;

/// <summary>A joint of the tank's circuit where coolant can get out.</summary>
internal enum Joint
{
    /// <summary>Flow line at the engine.</summary>
    EngineFlow,

    /// <summary>Flow line at the tank.</summary>
    TankFlow,

    /// <summary>Return line at the tank.</summary>
    TankReturn,

    /// <summary>Return line at the engine.</summary>
    EngineReturn,
}

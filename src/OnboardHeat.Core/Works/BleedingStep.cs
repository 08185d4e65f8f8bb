namespace OnboardHeat.Core.Works;

/// <summary>How far filling and bleeding the circuit has come, as far as the probes tell.</summary>
public enum BleedingStep
{
    /// <summary>The van lacks the probes on the lines, or they are not believed.</summary>
    CannotTell,

    /// <summary>The engine stands: nothing is pumped.</summary>
    EngineOff,

    /// <summary>The engine runs and neither line is warm yet.</summary>
    WarmingUp,

    /// <summary>One line is warm and the other stays cold: nothing passes the coil.</summary>
    OneLineOnly,

    /// <summary>Both lines are warm and one follows the other.</summary>
    Following,

    /// <summary>The lines hunt up and down: air is still moving.</summary>
    AirMoving,

    /// <summary>The tank has taken the heat that the coil should give, for three minutes without a break.</summary>
    Circulating,
}

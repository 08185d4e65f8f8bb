namespace OnboardHeat.Core.Journeys;

/// <summary>Why a standing spell says nothing of the lagging.</summary>
public enum NightReason
{
    /// <summary>
    /// Water was drawn: before it was long enough, or before it began, so that cold water lay below the warm all night.
    /// </summary>
    Draw,

    /// <summary>
    /// The valves to the coil were not closed for six hours on end: heat may leave through the coolant.
    /// </summary>
    ValvesOpen,

    /// <summary>The tank lost so fast that coolant must have turned by its own buoyancy.</summary>
    Circulation,

    /// <summary>The electric element came on before it was long enough.</summary>
    Element,

    /// <summary>It was shorter than six hours.</summary>
    TooShort,

    /// <summary>The tank was less than 15 K above its surroundings at the start.</summary>
    TooCool,

    /// <summary>The surroundings were not known for nearly all of it.</summary>
    SurroundingsUnknown,

    /// <summary>The tank did not cool: its probes cannot have seen what it was doing.</summary>
    NotCooling,
}

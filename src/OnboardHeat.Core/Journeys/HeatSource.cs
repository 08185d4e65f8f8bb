namespace OnboardHeat.Core.Journeys;

/// <summary>What heated the tank.</summary>
public enum HeatSource
{
    /// <summary>The coolant alone.</summary>
    Coolant,

    /// <summary>The electric element alone.</summary>
    Element,

    /// <summary>Both at once: what came from which cannot be told.</summary>
    Both,
}

namespace OnboardHeat.Core.Works;

/// <summary>How warm a coolant line is against the air about it.</summary>
public enum LineWarmth
{
    /// <summary>No believed reading tells.</summary>
    Unknown,

    /// <summary>Near the air about it.</summary>
    Cold,

    /// <summary>Clearly warmer than the air.</summary>
    Warm,
}

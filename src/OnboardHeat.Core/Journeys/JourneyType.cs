namespace OnboardHeat.Core.Journeys;

/// <summary>A kind of stretch of time that a person looks back on.</summary>
public enum JourneyType
{
    /// <summary>Coolant or the electric element heats the tank.</summary>
    Heating,

    /// <summary>The tank stands untouched, nothing heats, for half an hour or more.</summary>
    Standing,

    /// <summary>Hot water is drawn.</summary>
    Draw,

    /// <summary>The engine rests for less than half an hour between two stretches of driving.</summary>
    Stop,
}

namespace OnboardHeat.Core.Journeys;

/// <summary>What ended a journey.</summary>
public enum JourneyEnd
{
    /// <summary>It came to an end by itself: heat stopped coming, or water stopped flowing.</summary>
    ByItself,

    /// <summary>The engine was started.</summary>
    Engine,

    /// <summary>The electric element was switched on.</summary>
    Element,

    /// <summary>Water was drawn.</summary>
    Draw,

    /// <summary>
    /// Nothing is known of the time after it: readings were missing, the tank was drained, or the daemon stopped.
    /// </summary>
    RecordEnd,
}

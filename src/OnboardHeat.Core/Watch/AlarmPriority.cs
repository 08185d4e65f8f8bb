namespace OnboardHeat.Core.Watch;

/// <summary>How soon a person has to act.</summary>
public enum AlarmPriority
{
    /// <summary>Good to know; never sounds.</summary>
    Advice,

    /// <summary>Act soon; sounds only with the engine on.</summary>
    Warning,

    /// <summary>Act now; always sounds.</summary>
    Critical,
}
